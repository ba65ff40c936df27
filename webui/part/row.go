package part

// Row is one amount of a result.
type Row struct{ Name, Amount string }
