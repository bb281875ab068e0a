package exercise

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/mechanism"
	"steelyard/planar"
)

// Setup is an exercise on a machine with its settings chosen: the contact
// along the travel, in space, without a person. It does not change.
type Setup struct {
	Exercise Exercise
	Station  Station
	Mirrored bool   // the machine's forces are of one side
	Axis     r3.Vec // m; with Station.HasAxis

	points  []Point
	drivers []float64 // rad or m, of each position
	space   space
	model   *mechanism.Model
	link    mechanism.LinkID
	rope    int // tied to the handle, or -1
	last    bool
	held    float64 // kg, of weights held
}

// Point is the contact at one position.
type Point struct {
	At    r3.Vec       // m
	Path  r3.Vec       // unit, towards the end of the travel
	Turn  planar.Angle // of the link that carries the contact, from the measured pose
	Pull  r3.Vec       // unit, the way a rope pulls its handle; 0 where there is none
	Share float64      // of the driver's way, 0 to 1
	Gone  bool         // the machine cannot be there
}

// axisFree tells which coordinate of the contact the sheet leaves open; it is
// then taken from the limb.
type axisFree int

const (
	allKnown axisFree = iota
	zFree             // an upright plane that may stand anywhere across the seat
	yFree             // a level plane at any height
)

// NewSetup returns the setup of an exercise on a machine at the positions of
// its sweep; model and sweep are the machine's own. It returns an error if the
// station leaves open where the body is.
func NewSetup(x Exercise, st Station, md *mechanism.Model, sw *mechanism.Sweep) (*Setup, error) {
	m := md.Machine()
	s := &Setup{Exercise: x, Station: st, Mirrored: m.Plane.Mirrored, points: make([]Point, sw.Len())}
	if err := st.check(x); err != nil {
		return nil, err
	}
	s.space = newSpace(&st, m)
	s.model, s.link, s.rope, s.last = md, m.Contact.Link, -1, false
	if st.HasAxis {
		s.Axis = s.space.point(st.Axis)
	}
	if st.Contact == Held {
		s.held = heldMass(m) / s.Limbs()
	}
	if st.Contact == RopeHandle {
		s.rope, s.last = handleRope(m)
	}
	state := md.NewState()
	for i := range s.points {
		s.drivers = append(s.drivers, sw.Driver[i])
		if !sw.Posed[i] || state.MoveTo(sw.Driver[i]) != nil {
			s.points[i].Gone = true
			continue
		}
		s.points[i] = s.read(state)
		s.points[i].Path = s.space.turn(sw.Tangent[i])
	}
	return s, nil
}

// read returns the contact in the state's present pose, but for its path.
func (s *Setup) read(state *mechanism.State) Point {
	m := s.model.Machine()
	p := Point{
		At:    s.space.point(state.Pose(s.link).Point(m.Contact.At)),
		Turn:  state.Turn(s.link),
		Share: (state.Driver() - m.Drive.From) / (m.Drive.To - m.Drive.From),
	}
	if s.rope >= 0 {
		p.Pull = s.pull(state)
	}
	return p
}

// pull returns the way the rope pulls the handle: along its straight piece that
// is tied there.
func (s *Setup) pull(state *mechanism.State) r3.Vec {
	spans := state.Spans(s.rope)
	p := spans[0]
	if s.last {
		p = spans[len(spans)-1]
		p.From, p.To = p.To, p.From
	}
	return r3.Unit(s.space.turn(p.To.Sub(p.From)))
}

// heldMass is the mass of the weights on the contact's link, kg.
func heldMass(m *mechanism.Machine) float64 {
	total := 0.0
	for i := range m.Weights {
		if w := &m.Weights[i]; w.Link == m.Contact.Link {
			total += w.Mass
		}
	}
	return total
}

// handleRope returns the rope tied to the contact's link and whether it ends
// there, or -1.
func handleRope(m *mechanism.Machine) (rope int, last bool) {
	for i := range m.Ropes {
		route := m.Ropes[i].Route
		switch m.Contact.Link {
		case route[len(route)-1].Link:
			return i, true
		case route[0].Link:
			return i, false
		}
	}
	return -1, false
}

func (st *Station) check(x Exercise) error {
	if (st.Contact == Pad || st.Contact == Strap) && st.On == NoPart {
		return errors.New("exercise: the pad bears on no part of the body; say in the station on what, such as the shank")
	}
	if (st.On == OnShoulders || st.On == OnHips || st.On == OnKnees) && !st.HasFeet {
		return errors.New("exercise: the station does not say where the feet stand; name the point of the feet in it")
	}
	if st.On != OnShoulders && st.Anchor == NoAnchor {
		return errors.New("exercise: nothing says where the body is; name the point of seat, bench, feet or hips in the station")
	}
	return nil
}

// Len returns the number of positions.
func (s *Setup) Len() int { return len(s.points) }

// Point returns the contact at position i. Coordinates that the sheet leaves
// open are zero there; see Placement.Contact.
func (s *Setup) Point(i int) Point { return s.points[i] }

// Limbs returns among how many limbs the machine's force is shared.
func (s *Setup) Limbs() float64 {
	if s.Mirrored || s.Station.OneLimb {
		return 1
	}
	return 2
}

// bar reports whether both hands hold one weight.
func (s *Setup) bar() bool {
	return s.Station.Contact == Held && s.Station.On == NoPart && s.Limbs() == 2
}

// space takes the plane of the sheet to the ground frame, right side.
type space struct {
	origin r3.Vec // where the measured contact is
	from   planar.Vec
	x, y   r3.Vec // the plane's axes
	free   axisFree
}

// newSpace places the plane through the measured contact. A plane's height and
// distance from the mid-plane count at that contact if they are given.
func newSpace(st *Station, m *mechanism.Machine) space {
	s, c := math.Sincos(float64(m.Plane.Tilt))
	at := m.Contact.At
	sp := space{from: at, x: r3.Vec{X: 1}, y: r3.Vec{Y: c, Z: s}}
	sp.origin = r3.Vec{X: at.X, Y: st.Height.Or(at.Y * c), Z: m.Plane.Offset + at.Y*s}
	if st.FromFront {
		sp.x, sp.y = r3.Vec{Z: 1}, r3.Vec{Y: 1}
		sp.origin = r3.Vec{X: st.Forward.Value, Y: at.Y, Z: m.Plane.Offset + at.X}
		return sp
	}
	if st.Width.Given {
		sp.origin.Z = st.Width.Value / 2
	}
	switch {
	case math.Abs(c) < levelPlane && !st.Height.Given:
		sp.free = yFree
	case math.Abs(s) < levelPlane && !st.Width.Given && m.Plane.Offset == 0:
		sp.free = zFree
	}
	return sp
}

// levelPlane is the cosine of the tilt from which a plane counts as level: 0.6°.
const levelPlane = 0.01

func (sp *space) point(p planar.Vec) r3.Vec {
	return r3.Add(sp.origin, sp.turn(p.Sub(sp.from)))
}

func (sp *space) turn(v planar.Vec) r3.Vec {
	return r3.Add(r3.Scale(v.X, sp.x), r3.Scale(v.Y, sp.y))
}
