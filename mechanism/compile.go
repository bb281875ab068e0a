package mechanism

import (
	"errors"
	"fmt"
	"math/bits"
)

// Model is a machine made ready to be followed: checked, its one freedom
// found, its links ordered into groups. It is immutable and may be shared;
// each goroutine follows it with a [State] of its own.
type Model struct {
	machine     Machine
	constraints []constraint
	groups      []group
	rows        int        // of all constraints together
	bodies      []body     // by LinkID; [0] is the ground and empty
	lines       []line     // ropes first, then elements along a route
	lineOf      []int      // by element: its place in lines, -1 about a joint
	load        float64    // kg, of the weights that count as the load
	forward     float64    // +1 or -1: sign of the driver while lifting
	firstRope   int        // index into constraints of rope 0
	rubs        bool       // there is friction anywhere
	rubbers     []rubber   // where friction follows a load
	heaviness   float64    // N, a scale for rounding: all weights together
	ready       bool       // the measured pose was found to close
	gravity     [2]float64 // m/s² along -y: in the plane, and upright
}

// Compile checks the machine and prepares it. Errors are *[PartError],
// *[FreedomError], or a *[Stop] if the measured pose itself fails.
func Compile(m Machine) (*Model, error) {
	if err := check(&m); err != nil {
		return nil, err
	}
	md := &Model{machine: m, forward: 1, gravity: [2]float64{Gravity * m.Plane.Slope(), Gravity}}
	if m.Drive.To < m.Drive.From {
		md.forward = -1
	}
	md.bodies, md.load = gather(&m)
	if err := md.compileLines(); err != nil {
		return nil, err
	}
	md.listConstraints()
	md.noteFriction()
	groups, err := order(len(m.Links), md.constraints)
	var sets *freedomSets
	if errors.As(err, &sets) {
		return nil, &FreedomError{Freedoms: sets.freedoms, Loose: md.linkNames(sets.loose), Tight: md.linkNames(sets.tight)}
	}
	md.groups = groups
	for i := range md.groups {
		md.groups[i].dyad = md.findDyad(&md.groups[i])
	}
	if err := md.NewState().Reset(); err != nil {
		return nil, err
	}
	md.ready = true
	return md, nil
}

// Machine returns the description the model was compiled from. Its slices are
// shared and must not be changed.
func (md *Model) Machine() *Machine { return &md.machine }

func (md *Model) listConstraints() {
	m := &md.machine
	add := func(k constraintKind, index int, links uint32) {
		md.constraints = append(md.constraints, constraint{k, index, links, md.rows})
		md.rows += k.rows()
	}
	for i, j := range m.Joints {
		kind := pinned
		if j.Kind == Prismatic {
			kind = guided
		}
		add(kind, i, bit(j.A)|bit(j.B))
	}
	j := m.Joints[m.Drive.Joint]
	add(driven, m.Drive.Joint, bit(j.A)|bit(j.B))
	md.firstRope = len(md.constraints)
	for i, r := range m.Ropes {
		links := uint32(0)
		for _, s := range r.Route {
			links |= bit(s.Link)
		}
		add(roped, i, links)
	}
}

// noteFriction records where there is friction and how heavy the machine is.
func (md *Model) noteFriction() {
	m := &md.machine
	for i := range m.Joints {
		f, kind := m.Joints[i].Friction, rubPin
		if m.Joints[i].Kind == Prismatic {
			kind = rubSlider
		}
		if f.Coefficient > 0 && (kind == rubSlider || f.Radius > 0) {
			md.rubbers = append(md.rubbers, rubber{kind, i})
		}
		md.rubs = md.rubs || f.Drag > 0
	}
	for i := range m.Ropes {
		lossy := false
		for _, s := range m.Ropes[i].Route {
			lossy = lossy || s.Loss != (RopeLoss{})
		}
		if lossy {
			md.rubbers = append(md.rubbers, rubber{rubRope, i})
		}
	}
	md.rubs = md.rubs || len(md.rubbers) > 0
	for _, b := range md.bodies {
		md.heaviness += b.mass * Gravity
	}
}

// bit returns the set of the one moving link, empty for the ground.
func bit(l LinkID) uint32 {
	if l == Ground {
		return 0
	}
	return 1 << (l - 1)
}

func (md *Model) linkNames(set uint32) []string {
	var names []string
	for ; set != 0; set &= set - 1 {
		names = append(names, md.linkName(LinkID(bits.TrailingZeros32(set)+1)))
	}
	return names
}

func (md *Model) linkName(l LinkID) string {
	if l == Ground {
		return "the ground"
	}
	return fmt.Sprintf("link %q", md.machine.Links[l-1].Name)
}

// body is all the mass of a link taken together.
type body struct {
	mass    float64 // kg
	center  vec     // m, at the measured pose
	inertia float64 // kg·m² about center
	upright bool
}

// gather sums each link's own mass and the weights fixed to it, by the
// parallel-axis theorem. It also returns the mass that counts as the load.
func gather(m *Machine) (bodies []body, load float64) {
	bodies = make([]body, len(m.Links)+1)
	for i, l := range m.Links {
		bodies[i+1] = body{l.Mass, l.Center, l.Inertia, l.Upright}
	}
	for _, w := range m.Weights {
		if w.Link == Ground {
			continue
		}
		if w.Load {
			load += w.Mass
		}
		b := &bodies[w.Link]
		b.inertia += w.Inertia
		total := b.mass + w.Mass
		if total == 0 {
			continue
		}
		d := w.At.Sub(b.center)
		b.inertia += b.mass * w.Mass / total * d.Dot(d)
		b.center = b.center.Add(d.Scale(w.Mass / total))
		b.mass = total
	}
	return bodies, load
}
