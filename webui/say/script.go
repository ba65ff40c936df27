package say

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"strings"
	"text/template/parse"
)

// asked is where a script asks for a sentence: say("key"), or say("key", { Name: value }).
var asked = regexp.MustCompile(`\bsay\("([a-z0-9-]+)"(\)|, )`)

// InScript puts the sentences of a script, such as tonight.js, in the places where it asks for
// them: one without values as a string, one with values as a function that is called with
// them. So a script brings its sentences along, and a page nothing for it. It fails if a
// sentence is missing, or says more than a script can.
func InScript(name, source string) (string, error) { return inScript(embedded, name, source) }

func inScript(files fs.FS, name, source string) (string, error) {
	at := path.Join(tongue, "scripts", strings.TrimSuffix(name, ".js")+".txt")
	all, err := read(files, at)
	if err != nil {
		return "", err
	}
	var fault error
	out := asked.ReplaceAllStringFunc(source, func(mark string) string {
		m := asked.FindStringSubmatch(mark)
		sentence, found := all[m[1]]
		if !found {
			fault = fmt.Errorf("%s has no sentence %q; write it there", at, m[1])
			return mark
		}
		if m[2] == ")" {
			return quoted(sentence)
		}
		body, err := asFunction(sentence)
		if err != nil {
			fault = fmt.Errorf("%s: %q: %w", at, m[1], err)
		}
		return "((v) => `" + body + "`)("
	})
	return out, fault
}

// quoted is a string of a script.
func quoted(text string) string {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(text); err != nil {
		return `""` // a string can be encoded
	}
	return strings.TrimSuffix(b.String(), "\n")
}

// asFunction is a sentence as the body of a template literal over v, its values.
func asFunction(sentence string) (string, error) {
	t, err := Parse(sentence)
	if err != nil {
		return "", err
	}
	return literal(t.Root)
}

// escaped keeps plain text as it is within a template literal.
var escaped = strings.NewReplacer("\\", "\\\\", "`", "\\`", "${", "\\${")

func literal(list *parse.ListNode) (string, error) {
	if list == nil {
		return "", nil
	}
	var b strings.Builder
	for _, node := range list.Nodes {
		switch n := node.(type) {
		case *parse.TextNode:
			b.WriteString(escaped.Replace(string(n.Text)))
		case *parse.ActionNode:
			value, err := expression(n.Pipe)
			if err != nil {
				return "", err
			}
			b.WriteString("${" + value + "}")
		case *parse.IfNode:
			when, err := expression(n.Pipe)
			if err != nil {
				return "", err
			}
			then, err := literal(n.List)
			if err != nil {
				return "", err
			}
			otherwise, err := literal(n.ElseList)
			if err != nil {
				return "", err
			}
			b.WriteString("${" + when + " ? `" + then + "` : `" + otherwise + "`}")
		default:
			return "", fmt.Errorf("a script cannot say %s", node)
		}
	}
	return b.String(), nil
}

// expression is a value, or a value counted.
func expression(pipe *parse.PipeNode) (string, error) {
	if len(pipe.Cmds) == 1 {
		args := pipe.Cmds[0].Args
		if f, is := args[0].(*parse.FieldNode); is && len(args) == 1 && len(f.Ident) == 1 {
			return "v." + f.Ident[0], nil
		}
		if f, is := args[0].(*parse.IdentifierNode); is && f.Ident == "count" && len(args) > 2 {
			return counted(args[1:])
		}
	}
	return "", fmt.Errorf("a script cannot say {{%s}}", pipe)
}

// counted is [count] in a script.
func counted(args []parse.Node) (string, error) {
	n, is := args[0].(*parse.FieldNode)
	if !is || len(n.Ident) != 1 {
		return "", fmt.Errorf("a script cannot count %s", args[0])
	}
	var forms []string
	for _, arg := range args[1:] {
		s, is := arg.(*parse.StringNode)
		if !is {
			return "", fmt.Errorf("a script cannot count in %s", arg)
		}
		forms = append(forms, quoted(s.Text))
	}
	value := "v." + n.Ident[0]
	return value + ` + " " + [` + strings.Join(forms, ", ") + `][` + fmt.Sprintf(formInScript, value) + `]`, nil
}
