package sketch

import (
	"math"

	"steelyard/evaluation"
	"steelyard/mechanism"
	"steelyard/planar"
)

// Place is a machine at one place of its travel.
type Place struct {
	State   *mechanism.State  // stands there
	At      planar.Vec        // m, the contact
	Tangent planar.Vec        // unit, towards the end of the travel
	Shares  []mechanism.Share // what each source asks of the contact; nil where there is no force
	Main    int               // the greatest of them; -1 if none asks anything

	machine *mechanism.Machine
}

// PlaceAt brings the state to a row of the sweep. It fails only if the machine
// cannot be brought there.
func PlaceAt(e *evaluation.Evaluation, st *mechanism.State, row int) (Place, error) {
	p := Place{State: st, At: e.Sweep.Contact[row], Tangent: e.Sweep.Tangent[row], Main: -1, machine: e.Model.Machine()}
	if err := st.MoveTo(e.Sweep.Driver[row]); err != nil {
		return Place{}, err
	}
	if e.Sweep.Stops[row] != nil {
		return p, nil
	}
	p.Shares = st.Shares()
	for i, s := range p.Shares {
		if s.Force != 0 && (p.Main < 0 || math.Abs(s.Force) > math.Abs(p.Shares[p.Main].Force)) {
			p.Main = i
		}
	}
	return p, nil
}

// Weighs reports whether a source is a body whose weight acts at its centre.
func Weighs(s *mechanism.Share) bool {
	return s.Kind == mechanism.LoadWeight || s.Kind == mechanism.OwnWeight
}
