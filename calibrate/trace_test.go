package calibrate

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"steelyard/planar"
)

// hearted returns a place of a cam with radii of 60 to 100 mm about its axis.
func hearted(a float64) planar.Vec {
	return planar.Polar(0.08+0.015*math.Cos(a)+0.005*math.Sin(2*a), planar.Angle(a))
}

func TestTraceEvensOut(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 6))
	const tap = 0.002 // m, ±
	for _, row := range []struct {
		name  string
		place func(a float64) planar.Vec
		n     int
		gain  float64 // least, of the support's error over that of the taps as they are
	}{
		{"circle off centre", func(a float64) planar.Vec { return planar.Polar(0.09, planar.Angle(a)).Add(planar.Vec{X: 0.02}) }, 24, 1.5},
		{"heart", hearted, 30, 1.2},
		{"finger drawn round", hearted, 400, 2},
	} {
		truth := make([]planar.Vec, 360)
		for i := range truth {
			truth[i] = row.place(2 * math.Pi * float64(i) / 360)
		}
		exact, err := planar.TracedThrough(truth)
		if err != nil {
			t.Fatal(err)
		}
		var raw, smooth float64
		const photos = 20
		for range photos {
			taps := make([]planar.Vec, row.n)
			for i := range taps {
				a := -2 * math.Pi * (float64(i) + 0.3*rng.Float64()) / float64(row.n) // clockwise
				taps[i] = row.place(a).Add(planar.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64()}.Scale(tap / 2))
			}
			points, err := Trace(taps, tap)
			if err != nil {
				t.Fatalf("%s: %v", row.name, err)
			}
			var at []planar.Vec
			for _, p := range points {
				at = append(at, p.At)
			}
			if polygonArea(at) < 0 || len(at) > MostTraced {
				t.Errorf("%s: %d points, area %g m²; want at most %d, counter-clockwise", row.name, len(at), polygonArea(at), MostTraced)
			}
			smooth += supportError(t, exact, at)
			raw += supportError(t, exact, thinned(taps))
		}
		t.Logf("%s: moment arm off by %.2f mm rms, taps as they are %.2f mm", row.name, 1000*math.Sqrt(smooth/photos), 1000*math.Sqrt(raw/photos))
		if gain := math.Sqrt(raw / smooth); gain < row.gain {
			t.Errorf("%s: evened out %.2f-fold; want at least %.1f-fold", row.name, gain, row.gain)
		}
	}
}

// supportError returns the mean square difference of support functions, m².
func supportError(t *testing.T, exact *planar.Traced, at []planar.Vec) float64 {
	got, err := planar.TracedThrough(at)
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for i := range 90 {
		phi := 2 * math.Pi / 90 * planar.Angle(i)
		h, _ := exact.Support(phi)
		g, _ := got.Support(phi)
		sum += (g - h) * (g - h) / 90
	}
	return sum
}

// TestTraceCorners keeps a half disc's corners, which no few waves follow.
func TestTraceCorners(t *testing.T) {
	var taps []planar.Vec
	for i := range 13 {
		taps = append(taps, planar.Polar(0.1, planar.Angle(math.Pi*float64(i)/12)))
	}
	for i := 1; i < 6; i++ {
		taps = append(taps, planar.Vec{X: -0.1 + 0.2*float64(i)/6})
	}
	points, err := Trace(taps, 0.0005)
	if err != nil {
		t.Fatal(err)
	}
	if len(points) != len(taps) || points[0].At != taps[0] || points[12].At != taps[12] {
		t.Errorf("%d points beginning at %v; want the %d taps as they are", len(points), points[0].At, len(taps))
	}
}

func TestTraceRefused(t *testing.T) {
	ring := func(n int) []planar.Vec { return rim(planar.Vec{}, 0.2, n) }
	crossed := ring(8)
	crossed[2], crossed[5] = crossed[5], crossed[2]
	for _, row := range []struct {
		name string
		taps []planar.Vec
		tap  float64
		want string
	}{
		{"too few", ring(4), 0.001, "has 4 places; 5 to 2000"},
		{"too many", ring(2001), 0.001, "2001 places"},
		{"always the same", make([]planar.Vec, 9), 0.001, "has 1 places that differ"},
		{"crossing itself", crossed, 0.001, "put the points in the order in which they lie round the outline"},
		{"on a line", []planar.Vec{{X: 0}, {X: 0.1}, {X: 0.2}, {X: 0.3}, {X: 0.4}, {X: 0.35}}, 0.001, "tap its edge all round"},
		{"not a number", append(ring(6), planar.Vec{X: math.NaN()}), 0.001, "place 7 of the cam's outline"},
		{"no error of a tap", ring(8), -1, "the error of a tap"},
	} {
		if _, err := Trace(row.taps, row.tap); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: %v; want …%s…", row.name, err, row.want)
		}
	}
}

// FuzzTrace looks for a panic, or for an outline that cannot be used.
func FuzzTrace(f *testing.F) {
	f.Add([]byte("a circle it is not, by any means"), uint8(20))
	f.Add([]byte{0, 0, 200, 0, 200, 200, 0, 200, 100, 250}, uint8(1))
	f.Fuzz(func(t *testing.T, data []byte, tap uint8) {
		var taps []planar.Vec
		for ; len(data) >= 2; data = data[2:] {
			taps = append(taps, planar.Vec{X: float64(int8(data[0])) / 500, Y: float64(int8(data[1])) / 500})
		}
		points, err := Trace(taps, float64(tap)/2000)
		if err != nil {
			return
		}
		var at []planar.Vec
		for _, p := range points {
			at = append(at, p.At)
		}
		if _, err := planar.TracedThrough(at); err != nil {
			t.Errorf("an outline that cannot be used: %v", err)
		}
	})
}
