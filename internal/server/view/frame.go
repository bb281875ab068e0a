package view

import (
	"steelyard/evaluation"
	"steelyard/internal/server/api"
	"steelyard/internal/sketch"
	"steelyard/mechanism"
)

// frame returns the machine at position k of its curve. The state is brought
// there.
func frame(e *evaluation.Evaluation, st *mechanism.State, k int, u evaluation.Formatter) (api.Frame, error) {
	m, row := e.Model.Machine(), e.Rows[k]
	p, err := sketch.PlaceAt(e, st, row)
	if err != nil {
		return api.Frame{}, err
	}
	f := api.Frame{Position: k, Travel: metres(e.Curve.Travel[k]), Contact: place(p.At), Tangent: unit(p.Tangent),
		Poses: poses(m, st), Lines: courses(e, st, row), Chains: chains(m, st), Body: bodyAt(e, row), Arms: []api.Arm{}, Forces: []api.Force{}, Shares: []api.Share{}}
	if stop := e.Sweep.Stops[row]; stop != nil {
		f.Gap = stop.Error()
		return f, nil
	}
	for _, s := range p.Shares {
		f.Shares = append(f.Shares, api.Share{Name: s.Name, Force: newtons(s.Force), Rise: share(s.Rise)})
	}
	f.Arms = arms(&p)
	f.Forces = forces(e, &p, row)
	f.Because = because(&f, &p, e.Sided(u.Force(e.Curve.Lift[k])), u)
	return f, nil
}

func poses(m *mechanism.Machine, st *mechanism.State) []api.Pose {
	out := []api.Pose{}
	for l := range linkCount(m) {
		p := st.Pose(l)
		out = append(out, api.Pose{X: metres(p.Shift.X), Y: metres(p.Shift.Y), Turn: share(float64(st.Turn(l)))})
	}
	return out
}

func courses(e *evaluation.Evaluation, st *mechanism.State, row int) []api.LineCourse {
	m := e.Model.Machine()
	has := e.Sweep.Stops[row] == nil
	out := []api.LineCourse{}
	for i, line := range m.Lines() {
		c := api.LineCourse{Course: places(st.Course(i)), Straight: [][2]api.Place{}}
		for _, s := range st.Spans(i) {
			c.Straight = append(c.Straight, [2]api.Place{place(s.From), place(s.To)})
		}
		switch {
		case line.Element != nil:
			c.Tension = newtons(pull(line.Element, st, i))
		case has:
			c.Tension = newtons(e.Sweep.Tension(row, i, mechanism.Lift))
			c.Slack = c.Tension <= 0
		}
		out = append(out, c)
	}
	return out
}

// pull returns what an element along a line pulls at rest, N.
func pull(el *mechanism.Element, st *mechanism.State, line int) float64 {
	length := 0.0
	way := st.Course(line)
	for k := 1; k < len(way); k++ {
		length += way[k].Sub(way[k-1]).Norm()
	}
	force, _ := el.Law.Pull(length, 0)
	return force
}

func chains(m *mechanism.Machine, st *mechanism.State) []api.Hanging {
	out := []api.Hanging{}
	for i := range m.Chains {
		c := &m.Chains[i]
		top, foot := sketch.Hanging(st, c)
		out = append(out, api.Hanging{Name: c.Name, Top: place(top), Foot: place(foot), Heap: foot.Y == c.Floor})
	}
	return out
}
