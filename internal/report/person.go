package report

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/evaluation"
	"steelyard/internal/draw"
	"steelyard/internal/sketch"
	"steelyard/planar"
)

// figureOf is a person at one row of the sweep.
type figureOf struct {
	sketch.Person
	row int
}

func personAt(e *evaluation.Evaluation, row int) figureOf {
	return figureOf{sketch.PersonAt(e, row), row}
}

// upperBody returns trunk, head and what joins the sides.
func (f *figureOf) upperBody() []sketch.Segment { return append(f.Trunk(), f.Girdles()...) }

// rest returns trunk, head and the limbs that do not work.
func (f *figureOf) rest() []sketch.Segment {
	out := f.upperBody()
	if f.LegWorks() {
		return out
	}
	hip, knee, ankle := f.IdleLeg()
	shank := r3.Unit(r3.Sub(ankle, knee))
	toe := r3.Vec{X: math.Copysign(1, f.Placement.Trunk.X.X)}
	if math.Abs(shank.X) > math.Abs(shank.Y) {
		toe = shank
	}
	return append(append(out, f.Leg(hip, knee, ankle)...), f.foot(ankle, toe, r3.Scale(-1, shank)))
}

// foot returns the foot of an ankle, with the way to the toe and the way up
// from the sole.
func (f *figureOf) foot(ankle, toe, up r3.Vec) sketch.Segment {
	l, thick := &f.Meeting.Body.Links, f.FootThick()
	heel := r3.Sub(ankle, r3.Add(r3.Scale(l.HeelToAnkle-thick, toe), r3.Scale(l.AnkleHeight-thick, up)))
	return f.Foot(heel, r3.Add(heel, r3.Scale(l.Foot-2*thick, toe)))
}

// limb returns the limb that works, with its hand or foot.
func (f *figureOf) limb() []sketch.Segment {
	if !f.LegWorks() {
		return append(f.Limb(), f.Hand())
	}
	p := f.Placement
	return append(f.Limb(), f.foot(p.Limb.End, p.Toe, r3.Cross(p.Trunk.Z, p.Toe)))
}

// grow adds what the person takes up to b.
func (f *figureOf) grow(b *bounds) {
	for _, p := range append(f.rest(), f.limb()...) {
		b.add(p.From, p.Near)
		b.add(p.To, p.Far)
	}
}

// growWorking adds the limb that works and what of head and trunk tells how the
// body lies: for a leg, the lower half of the trunk.
func (f *figureOf) growWorking(b *bounds) {
	trunk := f.upperBody()
	if f.LegWorks() {
		trunk = []sketch.Segment{f.LowerTrunk()}
	}
	for _, p := range append(trunk, f.limb()...) {
		b.add(p.From, p.Near)
		b.add(p.To, p.Far)
	}
}

// person draws the body: light, the limb that works firmer.
func (s *stage) person(f *figureOf) {
	s.pieces(f.rest(), 0.08, 0.35)
	s.pieces(f.limb(), 0.2, 0.6)
}

// pieces draws segments as one shape.
func (s *stage) pieces(all []sketch.Segment, fill, edge float64) {
	var shapes []draw.Path
	for _, p := range all {
		shapes = append(shapes, draw.Capsule(s.frame.At(p.From), s.frame.At(p.To), s.frame.Len(p.Near), s.frame.Len(p.Far)))
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
	if f.LegWorks() {
		names = [2]string{"thigh", "shank"}
	}
	q := &f.Placement.Limb
	var leans []string
	for i, v := range []r3.Vec{r3.Sub(q.Mid, q.Root), r3.Sub(q.End, q.Mid)} {
		lean := planar.Angle(math.Asin(min(1, math.Abs(r3.Dot(r3.Unit(v), f.Out())))))
		if lean > slantWorth {
			leans = append(leans, names[i]+nbsp+decimal(lean.Degrees(), 0)+"°")
		}
	}
	if len(leans) == 0 {
		return ""
	}
	return "leaning out of the picture: " + strings.Join(leans, ", ")
}
