package part

// AlsoCounted is open to tests.
var AlsoCounted = alsoCounted
