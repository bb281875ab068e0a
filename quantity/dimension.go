package quantity

import "strings"

// Dimension is what a number is a measure of. Two quantities of one SI unit but
// different meaning, such as a moment and an energy, are different dimensions.
type Dimension uint8

// The dimensions, each with the SI unit of its values.
const (
	_                Dimension = iota
	Ratio                      // 1
	Length                     // m
	Mass                       // kg
	Force                      // N
	Angle                      // rad
	Time                       // s
	Stiffness                  // N/m
	TorsionStiffness           // N·m/rad
	Moment                     // N·m
	LinearDensity              // kg/m
	Inertia                    // kg·m²
	Damping                    // N·s/m
	Modulus                    // Pa, also pressure
)

var dimensionNames = [...]string{
	"nothing measured",
	Ratio:            "a plain number or percentage",
	Length:           "a length",
	Mass:             "a mass",
	Force:            "a force",
	Angle:            "an angle",
	Time:             "a time",
	Stiffness:        "a spring stiffness",
	TorsionStiffness: "a torsion spring stiffness",
	Moment:           "a moment",
	LinearDensity:    "a mass per length",
	Inertia:          "a moment of inertia",
	Damping:          "a damping",
	Modulus:          "a pressure or modulus",
}

// String returns the dimension in a coach's words with its article: "a length".
func (d Dimension) String() string {
	if int(d) >= len(dimensionNames) {
		d = 0
	}
	return dimensionNames[d]
}

// choices lists the units of d as they are easiest to type: "mm, cm, m, in or ft".
func (d Dimension) choices() string {
	var names []string
	for _, row := range units {
		if row.dimension == d && row.typed != "" {
			names = append(names, row.typed)
		}
	}

	last := len(names) - 1
	if last < 1 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:last], ", ") + " or " + names[last]
}
