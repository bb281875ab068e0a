package checks

import "fmt"

// Push asks for the direction of a hand or foot force that makes the greatest
// effort, and a price on leaning from the path, least. The force has a given
// part along the path and parts across it that are free.
type Push struct {
	Force  float64 `json:"force"` // N along the path
	Bound  float64 `json:"bound"` // most of each part across, over Force
	Price  float64 `json:"price"` // of a lean by Bound on one axis, over the greatest effort without a lean; grows with the square
	Joints []Asked `json:"joints"`
}

// Asked is the moment of one joint axis, Base + Along·force + Across·x, and what
// it can produce.
type Asked struct {
	Base      float64    `json:"base"`      // N m
	Along     float64    `json:"along"`     // m
	Across    [2]float64 `json:"across"`    // m
	Available [2]float64 `json:"available"` // N m, for a positive and for a negative moment; 0 is unknown
}

// Eased is the answer.
type Eased struct {
	Across  [2]float64 `json:"across"`  // N, of the least greatest effort and price together
	Reached float64    `json:"reached"` // the greatest effort with that
}

// SciPyEffort finds directions of least effort.
var SciPyEffort = Engine{"SciPy", []string{"/usr/bin/python3", "-B", "effort/least.py"}}

// Ease returns the answer to each question.
func (e Engine) Ease(name string, asked []Push) (out []Eased, err error) {
	if err := e.ask(name, asked, &out); err != nil {
		return nil, err
	}
	if len(out) != len(asked) {
		return nil, fmt.Errorf("checks: %s with %s: %d directions for %d asked", name, e.Name, len(out), len(asked))
	}
	return out, nil
}
