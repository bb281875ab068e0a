module steelyard/checks

go 1.26.0

require steelyard v0.0.0

require (
	golang.org/x/tools v0.52.0 // indirect
	gonum.org/v1/gonum v0.17.0
)

replace steelyard => ../
