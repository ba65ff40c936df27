// Package form reads what the form of a page sends: text, numbers with a decimal
// point or comma, versions, choices, and who the guest is.
//
// What a user wrote wrong is a [flavor.Fault] that names its field, for the page
// to show beside it. What no page of ours sends is [ErrUnreadable].
package form
