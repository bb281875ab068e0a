package report

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/evaluation"
	"steelyard/exercise"
	"steelyard/human"
	"steelyard/internal/draw"
	"steelyard/planar"
)

// figureOf is a person at one row of the sweep, seen square to the machine's
// plane: the right side.
type figureOf struct {
	m      *evaluation.Meeting
	p      *exercise.Placement
	row    int
	origin planar.Vec // of the contact on the sheet
	x, y   r3.Vec     // the plane's axes in space
}

func personAt(e *evaluation.Evaluation, row int) figureOf {
	m := e.Person
	f := figureOf{m: m, p: &m.Rest.Placements[row], row: row, origin: e.Sweep.Contact[row]}
	sin, cos := math.Sincos(float64(e.Model.Machine().Plane.Tilt))
	f.x, f.y = r3.Vec{X: 1}, r3.Vec{Y: cos, Z: sin}
	if m.Rest.Setup.Station.FromFront {
		f.x, f.y = r3.Vec{Z: 1}, r3.Vec{Y: 1}
	}
	return f
}

// on returns where a point of space is seen on the sheet.
func (f *figureOf) on(v r3.Vec) planar.Vec {
	return f.origin.Add(f.turn(r3.Sub(v, f.p.Contact)))
}

// turn returns what is seen of a free vector.
func (f *figureOf) turn(v r3.Vec) planar.Vec {
	return planar.Vec{X: r3.Dot(v, f.x), Y: r3.Dot(v, f.y)}
}

// out returns the unit vector towards who looks at the sheet.
func (f *figureOf) out() r3.Vec { return r3.Cross(f.x, f.y) }

// piece is a body segment as a capsule, m.
type piece struct {
	a, b   planar.Vec
	ra, rb float64
}

// Half thicknesses of segments over the height, for the eye only.
const (
	trunkThick    = 0.060
	headThick     = 0.055
	headBelow     = 0.068 // centre of the head below the crown
	thighThick    = 0.044
	kneeThick     = 0.030
	ankleThick    = 0.020
	footThick     = 0.014
	shoulderThick = 0.032
	elbowThick    = 0.023
	wristThick    = 0.017
	handThick     = 0.024
)

func (f *figureOf) height() float64 { return f.m.Person.Person.Height }

func (f *figureOf) segment(a, b r3.Vec, ta, tb float64) piece {
	return piece{f.on(a), f.on(b), ta * f.height(), tb * f.height()}
}

// trunkPieces is how many of the pieces of rest are trunk and head.
const trunkPieces = 5

// rest returns trunk, head and the limbs that do not work.
func (f *figureOf) rest() []piece {
	l, t := &f.m.Body.Links, &f.p.Trunk
	shoulders := t.Point(r3.Vec{Y: l.Trunk})
	head := t.Point(r3.Vec{Y: l.HipToCrown - headBelow*f.height()})
	out := []piece{
		f.segment(t.Origin, shoulders, trunkThick, trunkThick),
		f.segment(shoulders, head, wristThick, wristThick),
		f.segment(head, head, headThick, headThick),
		f.segment(t.Shoulder(*l, human.Left), t.Shoulder(*l, human.Right), elbowThick, elbowThick),
		f.segment(t.Hip(*l, human.Left), t.Hip(*l, human.Right), kneeThick, kneeThick),
	}
	if f.p.Toe == (r3.Vec{}) {
		out = append(out, f.idleLeg()...)
	}
	return out
}

// idleLeg hints at a leg that does not work: as the posture has it.
func (f *figureOf) idleLeg() []piece {
	l, t := &f.m.Body.Links, &f.p.Trunk
	st := &f.m.Rest.Setup.Station
	thigh, shank := r3.Scale(-1, t.Y), r3.Vec{Y: -1}
	switch st.Posture {
	case exercise.Seated:
		sin, cos := math.Sincos(float64(st.Thigh))
		thigh = r3.Vec{X: math.Copysign(cos, t.X.X), Y: sin}
	case exercise.Standing, exercise.LyingOnFront:
		shank = thigh
	case exercise.Kneeling:
		shank = r3.Vec{X: -math.Copysign(1, t.X.X)}
	}
	hip := t.Hip(*l, human.Right)
	knee := r3.Add(hip, r3.Scale(l.Thigh, thigh))
	ankle := r3.Add(knee, r3.Scale(l.Shank, shank))
	toe := r3.Vec{X: math.Copysign(1, t.X.X)}
	if math.Abs(shank.X) > math.Abs(shank.Y) {
		toe = shank
	}
	return append([]piece{f.segment(hip, knee, thighThick, kneeThick), f.segment(knee, ankle, kneeThick, ankleThick)}, f.foot(ankle, toe, r3.Scale(-1, shank)))
}

// foot returns the foot of an ankle, with the way to the toe and the way up
// from the sole.
func (f *figureOf) foot(ankle, toe, up r3.Vec) piece {
	l := &f.m.Body.Links
	thick := footThick * f.height()
	heel := r3.Sub(ankle, r3.Add(r3.Scale(l.HeelToAnkle-thick, toe), r3.Scale(l.AnkleHeight-thick, up)))
	return f.segment(heel, r3.Add(heel, r3.Scale(l.Foot-2*thick, toe)), footThick, footThick)
}

// limb returns the limb that works.
func (f *figureOf) limb() []piece {
	q := f.p.Limb
	if f.p.Toe == (r3.Vec{}) {
		return []piece{f.segment(q.Root, q.Mid, shoulderThick, elbowThick), f.segment(q.Mid, q.End, elbowThick, wristThick), f.segment(q.End, q.End, handThick, handThick)}
	}
	up := r3.Cross(f.p.Trunk.Z, f.p.Toe)
	return []piece{f.segment(q.Root, q.Mid, thighThick, kneeThick), f.segment(q.Mid, q.End, kneeThick, ankleThick), f.foot(q.End, f.p.Toe, up)}
}

// grow adds what the person takes up to b.
func (f *figureOf) grow(b *bounds) {
	for _, p := range append(f.rest(), f.limb()...) {
		b.add(p.a, p.ra)
		b.add(p.b, p.rb)
	}
}

// growWorking adds the limb that works and what of head and trunk tells how the
// body lies: for a leg, the lower half of the trunk.
func (f *figureOf) growWorking(b *bounds) {
	all := append(f.rest()[:trunkPieces], f.limb()...)
	if f.p.Toe != (r3.Vec{}) {
		all = f.limb()
		half := f.p.Trunk.Point(r3.Vec{Y: f.m.Body.Links.Trunk / 2})
		all = append(all, f.segment(f.p.Trunk.Origin, half, trunkThick, trunkThick))
	}
	for _, p := range all {
		b.add(p.a, p.ra)
		b.add(p.b, p.rb)
	}
}

// person draws the body: light, the limb that works firmer.
func (s *stage) person(f *figureOf) {
	s.pieces(f.rest(), 0.08, 0.35)
	s.pieces(f.limb(), 0.2, 0.6)
}

// pieces draws segments as one shape.
func (s *stage) pieces(all []piece, fill, edge float64) {
	var shapes []draw.Path
	for _, p := range all {
		shapes = append(shapes, draw.Capsule(s.frame.At(p.a), s.frame.At(p.b), s.frame.Len(p.ra), s.frame.Len(p.rb)))
	}
	for _, shape := range shapes {
		s.Stroke(shape, s.pen(0.14, mix(s.th.Person, s.th.Paper, edge)))
	}
	for _, shape := range shapes {
		s.Fill(shape, mix(s.th.Person, s.th.Paper, fill))
	}
}

// slantWorth is how far a segment leans out of the picture before the reader is
// told: from there it looks 3 % too short.
const slantWorth = 14 * planar.Degree

// slants tells which segments lean out of the picture, so that they look
// shorter than they are.
func (f *figureOf) slants() string {
	names := [2]string{"upper arm", "forearm"}
	if f.p.Toe != (r3.Vec{}) {
		names = [2]string{"thigh", "shank"}
	}
	q := f.p.Limb
	var leans []string
	for i, v := range []r3.Vec{r3.Sub(q.Mid, q.Root), r3.Sub(q.End, q.Mid)} {
		lean := planar.Angle(math.Asin(min(1, math.Abs(r3.Dot(r3.Unit(v), f.out())))))
		if lean > slantWorth {
			leans = append(leans, names[i]+nbsp+decimal(lean.Degrees(), 0)+"°")
		}
	}
	if len(leans) == 0 {
		return ""
	}
	return "leaning out of the picture: " + strings.Join(leans, ", ")
}
