package part

// Row is a name and an amount of a result.
type Row struct{ Name, Amount string }
