package webui

// What the tests of this folder look at from outside.

var Embedded = embedded
var WaitWords = waitWords
