// Package threshold says how many just-noticeable differences an axis of a ratio moved.
package threshold
