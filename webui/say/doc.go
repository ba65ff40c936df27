// Package say holds every sentence that the pages show, in one folder for each language, so
// that who translates them reads and writes nothing else.
//
// A file of sentences has a line for each: its key, a colon, a space and the sentence; a line
// that begins with a tab goes on with the one before. There are three kinds:
//
//   - english/pages: a file for each template, as it is called. A template names a sentence,
//     {{say "key"}}, which is put in that place before the template is parsed; so it may hold
//     what a template may, and is escaped as it stands there.
//   - english/views: a file for each package. Go code asks for a sentence by its file and key,
//     with named values: say.It("board.touched", "Drinks", 3). It is plain text; whoever shows
//     it escapes it. "&nbsp;" is a space at which no line breaks.
//   - english/scripts: a file for each script. A script asks as Go code does,
//     say("found", { Found: 3 }), and the sentence is put there before the script is served.
//
// Sentences are whole, since the order of words differs between languages: what changes in
// one is a named value, {{.Name}}, and a choice is made in the sentence, by {{if}}, and by
// {{count .Drinks "drink is" "drinks are"}}, which takes the form that the language has for a
// number.
//
// What the packages below the pages say, of drinks and of faults in what was written, stands
// with them and comes as a value.
package say
