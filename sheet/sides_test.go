package sheet

import (
	"math"
	"testing"

	"steelyard/planar"
)

// TestSides resolves the words for a rope's way past a sheave. The expected
// sense follows from the drawing: a rope that comes up behind a sheave, goes over
// it and down in front turns clockwise as seen from the person's right, where
// forward points to the right of the page.
func TestSides(t *testing.T) {
	const left, right, neither = planar.Left, planar.Right, planar.Side(0)
	at := func(x, y float64) *planar.Vec { return &planar.Vec{X: x, Y: y} }
	for _, c := range []struct {
		name          string
		pass          string
		before, after *planar.Vec // from the sheave's middle, in its radii
		want          planar.Side
	}{
		{"up behind, over, down in front", "over", at(-1, -20), at(1, -20), right},
		{"up in front, over, down behind", "over", at(1, -20), at(-1, -20), left},
		{"down behind, under, up in front", "under", at(-1, 20), at(1, 20), left},
		{"down in front, under, up behind", "under", at(1, 20), at(-1, 20), right},
		{"from below, over, forward", "over", at(-1, -20), at(20, 1), right},
		{"from below, behind, forward", "behind", at(-1, -20), at(20, 1), right},
		{"from in front, behind it, down", "behind", at(20, 1), at(-1, -20), left},
		{"from above, in front of it, back", "in front of", at(1, 20), at(-20, -1), right},
		{"almost straight, over", "over", at(-20, 0), at(20, 0), right},
		{"almost straight, under", "under", at(-20, 0), at(20, 0), left},
		{"almost straight up, in front", "in front of", at(0, -20), at(0, 20), left},
		{"almost straight up, behind", "behind", at(0, -20), at(0, 20), right},
		{"tensioner that presses the rope down", "under", at(-6, -0.6), at(6, -0.6), left},
		{"starts under a drum, forward", "under", nil, at(20, -1), left},
		{"starts over a drum, forward", "over", nil, at(20, 1), right},
		{"ends over a drum, from behind", "over", at(-20, 1), nil, right},
		{"ends under a drum, from behind", "under", at(-20, -1), nil, left},
		{"ends in front of a drum, from above", "in front of", at(1, 20), nil, right},
		{"ends behind a drum, from above", "behind", at(-1, 20), nil, left},

		{"under, but both ends hang down", "under", at(-1, -20), at(1, -20), neither},
		{"both ends at one place below", "over", at(0, -20), at(0, -20), neither},
		{"ends over a drum, from right above", "over", at(0, 20), nil, neither},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, ok := bend{before: c.before, after: c.after, radius: 1}.side(faces[c.pass])
			if !ok {
				got = neither
			}
			if got != c.want {
				t.Errorf("got side %+d, want %+d (+1 counter-clockwise, -1 clockwise, 0 asks back)", got, c.want)
			}
			mirrored := map[string]string{"over": "over", "under": "under", "behind": "in front of", "in front of": "behind"}
			mirror := func(p *planar.Vec) *planar.Vec {
				if p == nil {
					return nil
				}
				return &planar.Vec{X: -p.X, Y: p.Y}
			}
			again, ok := bend{before: mirror(c.before), after: mirror(c.after), radius: 1}.side(faces[mirrored[c.pass]])
			if !ok {
				again = neither
			}
			if again != -c.want {
				t.Errorf("mirrored front to back: got side %+d, want %+d", again, -c.want)
			}
		})
	}
}

// TestNormalTowards takes an ellipse, whose point in direction a from its centre
// has the normal atan2(y/b², x/a²) (gradient of x²/a² + y²/b²).
func TestNormalTowards(t *testing.T) {
	const a, b, tilt = 0.09, 0.05, 0.4
	e, err := planar.EllipseFromAxes(planar.Vec{}, a, b, tilt)
	if err != nil {
		t.Fatal(err)
	}
	for deg := -175.0; deg <= 180; deg += 12.5 {
		direction := planar.Angle(deg) * planar.Degree
		s, c := math.Sincos(float64(direction - tilt))
		want := planar.Angle(math.Atan2(s/(b*b), c/(a*a))) + tilt
		if got := normalTowards(e, direction); math.Abs(float64((got - want).Normalized())) > 1e-6 {
			t.Errorf("towards %g°: normal %.6f°, want %.6f°", deg, got.Degrees(), want.Normalized().Degrees())
		}
	}
}
