package mechanism

import (
	"math"

	"steelyard/planar"
)

// bytesReader makes numbers of a fuzzer's bytes, nought when they run out.
type bytesReader struct{ left []byte }

func (r *bytesReader) byte() byte {
	if len(r.left) == 0 {
		return 0
	}
	b := r.left[0]
	r.left = r.left[1:]
	return b
}

func (r *bytesReader) upTo(n int) int { return int(r.byte()) % n }

// number is mostly a place on a 20 mm grid within 2.5 m, at times something no
// tape reads.
func (r *bytesReader) number() float64 {
	b := r.byte()
	if b < 250 {
		return float64(int(b)-125) / 50
	}
	return []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e-300, 99.9}[b-250]
}

func (r *bytesReader) size() float64 {
	x := r.number()
	if x < 0 && r.byte() < 240 {
		return -x
	}
	return x
}

func (r *bytesReader) point() vec          { return vec{X: r.number(), Y: r.number()} }
func (r *bytesReader) angle() planar.Angle { return planar.Angle(r.number()) }

// link names a link of n, rarely one that is not there.
func (r *bytesReader) link(n int) LinkID {
	b := r.byte()
	if b > 252 {
		return LinkID(int(b) - 254)
	}
	return LinkID(int(b) % (n + 1))
}

func (r *bytesReader) outline() planar.Outline {
	switch r.upTo(5) {
	case 0, 1:
		return nil
	case 2:
		return planar.Circle{Radius: r.size() / 10, Center: r.point().Scale(0.02)}
	case 3:
		if o, err := planar.EllipseFromAxes(vec{}, r.size()/10, r.size()/10, r.angle()); err == nil {
			return o
		}
	default:
		if o, err := planar.Polygon(vec{}, r.point().Scale(0.1), r.point().Scale(0.1), r.point().Scale(0.1)); err == nil {
			return o
		}
	}
	return nil
}

func (r *bytesReader) route(links int) Route {
	route := make(Route, r.upTo(5))
	for i := range route {
		s := Station{Name: "station", Link: r.link(links), At: r.point(), Outline: r.outline(), Side: planar.Side(r.upTo(3) - 1)}
		if r.upTo(4) == 0 {
			s.Anchor, s.Turns = r.angle(), r.upTo(4)-1
			s.Loss = [...]RopeLoss{{Efficiency: r.size()}, {Slip: r.size()}, {Bearing: r.size(), AxleOverRim: r.size()}}[r.upTo(3)]
		}
		route[i] = s
	}
	return route
}

func (r *bytesReader) law() Law {
	switch r.upTo(7) {
	case 0:
		return Spring{r.size() * 100, r.number(), r.number(), r.upTo(2) == 0}
	case 1:
		return GasSpring{r.size() * 100, r.size(), r.size()}
	case 2:
		return Band{r.size(), r.size() / 1000, r.size() * 1e5}
	case 3:
		return Table{[]float64{r.size(), r.size(), r.size()}, []float64{r.size(), r.size(), r.size()}}
	case 4:
		return Steady{r.number()}
	case 5:
		return Damper{r.size()}
	}
	return nil
}

func (r *bytesReader) machine() Machine {
	m := Machine{Name: "fuzz"}
	n := r.upTo(6)
	for range n {
		m.Links = append(m.Links, Link{Name: "link", Mass: r.size(), Center: r.point(), Inertia: r.size(), Upright: r.upTo(4) == 0})
	}
	for range r.upTo(9) {
		j := Joint{Name: "joint", Kind: JointKind(min(r.upTo(4)/3, 1)), A: r.link(n), B: r.link(n), At: r.point(), Along: r.angle()}
		if r.upTo(4) == 0 {
			j.Friction = JointFriction{r.size() / 5, r.size() / 50, r.size(), r.size()}
		}
		m.Joints = append(m.Joints, j)
	}
	for range r.upTo(3) {
		m.Ropes = append(m.Ropes, Rope{"rope", r.route(n)})
	}
	for range r.upTo(3) {
		m.Elements = append(m.Elements, Element{Name: "element", Route: r.route(n), Joint: r.upTo(9), Law: r.law()})
	}
	for range r.upTo(3) {
		m.Weights = append(m.Weights, Weight{"weight", r.link(n), r.point(), r.size(), r.size(), true})
	}
	if r.upTo(3) == 0 {
		m.Chains = []Chain{{"chain", r.link(n), r.point(), r.number(), r.size(), r.size()}}
		m.Wheels = []Flywheel{{"wheel", r.upTo(9), r.size(), r.number()}}
	}
	m.Drive = Drive{r.upTo(9), r.number() / 4, r.number() / 4}
	m.Contact = Contact{"contact", r.link(n), r.point()}
	m.Plane = Plane{Tilt: r.angle() / 4}
	return m
}

// grown is a crank with dyads hung on what is there, and at times a stack on a
// rope: mostly of one freedom, whatever the numbers.
func (r *bytesReader) grown() Machine {
	m := Machine{Name: "grown", Links: []Link{{Name: "crank", Mass: r.size(), Center: r.point()}}, Joints: []Joint{{Name: "axis", B: 1, At: r.point()}}}
	kind := func() JointKind { return JointKind(r.upTo(4) / 3) }
	for range r.upTo(4) {
		there := len(m.Links)
		i, j := LinkID(there+1), LinkID(there+2)
		m.Links = append(m.Links, Link{Name: "first", Mass: r.size(), Center: r.point()}, Link{Name: "second", Inertia: r.size(), Center: r.point()})
		m.Joints = append(m.Joints,
			Joint{"outer", kind(), LinkID(r.upTo(there + 1)), i, r.point(), r.angle(), JointFriction{}},
			Joint{"inner", kind(), i, j, r.point(), r.angle(), JointFriction{r.size() / 5, r.size() / 50, r.size(), 0}},
			Joint{"far", kind(), j, LinkID(r.upTo(there + 1)), r.point(), r.angle(), JointFriction{}})
	}
	if r.upTo(2) == 0 {
		there := len(m.Links)
		at := r.point()
		stack, guide, plates := stackOn(LinkID(there+1), at.X, at.Y, r.size()*10)
		route := append(Route{{Name: "stack", Link: LinkID(there + 1), At: at}}, r.route(there)...)
		m.Links, m.Joints, m.Weights = append(m.Links, stack), append(m.Joints, guide), append(m.Weights, plates)
		m.Ropes = []Rope{{"main", append(route, Station{Name: "end", Link: LinkID(r.upTo(there + 1)), At: r.point(), Outline: r.outline(), Side: planar.Left})}}
	}
	m.Elements = []Element{{Name: "spring", Joint: 0, Law: r.law()}}
	m.Drive = Drive{r.upTo(len(m.Joints)), r.number() / 4, r.number() / 4}
	m.Contact = Contact{"contact", LinkID(1 + r.upTo(len(m.Links))), r.point()}
	return m
}
