// Package form reads the forms of the pages: text, numbers with a decimal point or comma,
// versions, choices, and the guest.
//
// An error in a user's input is a [flavor.DataFault] that names its field, so that the page
// can show it there. A form that no page of ours can have sent is [ErrUnreadable].
package form
