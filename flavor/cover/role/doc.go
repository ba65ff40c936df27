// Package role says what work a bottle does in a drink, and how far one bottle is from
// doing that of another, whatever the drink.
package role
