// Package webuitest is what the tests of the pages share: a bar, a house and a
// trainer that know a few bottles, the pages served over them, requests, checks of
// an answer, and a browser with an accessibility checker.
package webuitest
