package bench

// What the tests of this folder look at from outside.

const ViewRows = viewRows
const ViewText = viewText

type RowsView = rowsView

var ApplyRows = applyRows
var Rewrite = rewrite
var RowsOf = rowsOf
var SizesOf = sizesOf
