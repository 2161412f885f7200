package stock

import _ "embed"

// Name is what the catalogue is called where a place in it is shown. No file of a
// user has this name.
const Name = "built-in/stock.rig"

//go:embed stock.rig
var text string

// Text gives the catalogue: stock statements, each with what it is in the comment
// lines above and its source in the comment beside it.
func Text() string { return text }
