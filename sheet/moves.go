package sheet

import "fmt"

// readMoves reads the points and directions of settings that move or turn
// points, and applies the chosen amounts.
func (r *reader) readMoves() {
	for i, s := range r.settings {
		key, m := "moves", shift
		n := s.at.at("moves")
		if n == nil {
			key, m, n = "turns", angle, s.at.at("turns")
		}
		if n == nil || r.chosenValues[i] == nil {
			continue
		}
		f := r.fields(n, fmt.Sprintf("%s of setting %q", key, s.name), "")
		mv := move{about: nowhere, along: noDirection}
		if list := f.must("points", "list the points it takes along"); list != nil {
			r.listed(list, f.of("points"), func(p *node) {
				if id := r.point(p, "a point of "+f.String()); id != nowhere {
					mv.points = append(mv.points, id)
				}
			})
		}
		if key == "turns" {
			mv.about = f.mustPoint("about", "name the point it turns about")
		} else if d := f.must("along", "write along: [from point, to point], or up, forward, or an angle"); d != nil {
			mv.along, _ = r.direction(d, f.of("along"), s.name+", along")
		}
		f.close()
		r.checkAmounts(s, m)
		mv.amount = r.number(r.chosenValues[i], m, s.name, fmt.Sprintf("setting %q", s.name))
		r.plan.moves = append(r.plan.moves, mv)
	}
}
