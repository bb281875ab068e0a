package report

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"steelyard/internal/sketch"
	"steelyard/mechanism"
	"steelyard/planar"
	"steelyard/quantity"
)

func near(t testing.TB, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %g, want %g, difference %.3g > %g", what, got, want, got-want, tol)
	}
}

func number(t testing.TB, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestTravelTableObeysTheLawOfTheLever(t *testing.T) {
	// 40 kg at 0.4 m, held square to the lever at 0.8 m: F = W cos θ/2, travel
	// 0.8 m per rad from -30°. Archimedes, On the Equilibrium of Planes I, 6-7.
	e := evaluated(t, "level")
	metric := travelTable(e, Options{}.units())
	imperial := travelTable(e, Options{Imperial: true}.units())
	if len(metric.Rows) != places {
		t.Fatalf("%d rows, want %d", len(metric.Rows), places)
	}
	const weight = 40 * 9.80665
	for i, row := range metric.Rows {
		theta := (-30 + 6*float64(i)) * math.Pi / 180
		force := weight * math.Cos(theta) / 2
		near(t, "travel, cm", number(t, row[0]), 80*(theta+math.Pi/6), 0.05)
		near(t, "force, N", number(t, row[1]), force, 0.5)
		near(t, "lift ratio", number(t, row[2]), 0.5, 0.005)
		// I/L²: a 450 mm disc of 40 kg turning with the lever, m (r²/2 + 0.4²)/0.8².
		near(t, "effective mass, kg", number(t, row[3]), 40*(0.225*0.225/2+0.16)/0.64, 0.05)
		// NIST SP 811 (2008), B.8: 1 lbf = 4.448222 N, 1 in = 2.54 cm.
		near(t, "force, lbf", number(t, imperial.Rows[i][1]), force/4.448222, 0.05)
		near(t, "travel, in", number(t, imperial.Rows[i][0]), 80*(theta+math.Pi/6)/2.54, 0.05)
	}
}

func TestArmsOfALever(t *testing.T) {
	e := evaluated(t, "level")
	three, err := threePlaces(e)
	if err != nil {
		t.Fatal(err)
	}
	for i, degrees := range []float64{-30, 0, 30} {
		arms := armsOf(e.Model.Machine(), three[i])
		if len(arms) != 2 {
			t.Fatalf("%s: %d arms, want the load's and the contact's", three[i].Name, len(arms))
		}
		near(t, three[i].Name+": load arm, m", arms[0].Length(), 0.4*math.Cos(degrees*math.Pi/180), 1e-9)
		near(t, three[i].Name+": contact arm, m", arms[1].Length(), 0.8, 1e-9)
	}
}

func TestCamArmIsTheSupportOfItsOutline(t *testing.T) {
	// The distance from the origin to the tangent of an ellipse with semi-axes
	// a, b about c, at the normal φ: c·n + √(a² cos²(φ-tilt) + b² sin²(φ-tilt)).
	e := evaluated(t, "cam-curl")
	three, err := threePlaces(e)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range three {
		arms := f.RopeArms(sketch.Pinned(e.Model.Machine()))
		if len(arms) != 1 {
			t.Fatalf("%d cam arms, want 1", len(arms))
		}
		normal := arms[0].Foot.Sub(arms[0].Axis).Angle() - f.State.Turn(1)
		n := planar.Polar(1, normal)
		s, c := math.Sincos(float64(normal - 30*planar.Degree))
		want := 0.010*n.X + 0.005*n.Y + math.Hypot(0.100*c, 0.060*s)
		near(t, f.Name+": rope at the oval, m", arms[0].Length(), want, 1e-9)
	}
}

func TestALonePlaceIsAPieceWithoutLength(t *testing.T) {
	alone := &mechanism.Machine{Contact: mechanism.Contact{Link: 1, At: planar.Vec{X: 1, Y: 2}}}
	if got := piecesOf(alone, 1); len(got) != 1 || got[0][0] != got[0][1] || got[0][0] != alone.Contact.At {
		t.Errorf("a lone place has the pieces %v, want one without length there", got)
	}
	if got := piecesOf(alone, mechanism.Ground); len(got) != 0 {
		t.Errorf("nothing has the pieces %v", got)
	}
}

func TestStrokeZonesLastAsTheTempoSays(t *testing.T) {
	e := evaluated(t, "level")
	zones := tempoZones(e.Stroke)
	want := []struct {
		name    string
		seconds float64
	}{{"lifting", 2}, {"pause", 0.5}, {"lowering", 3}, {"pause", 0.5}}
	if len(zones) != len(want) {
		t.Fatalf("zones %v, want four", zones)
	}
	row := e.Stroke.Time[1] - e.Stroke.Time[0]
	for i, w := range want {
		if zones[i].Name != w.name {
			t.Errorf("zone %d is %s, want %s", i, zones[i].Name, w.name)
		}
		near(t, w.name+", s", zones[i].Hi-zones[i].Lo, w.seconds, row)
	}
}

func TestGapsAreNamed(t *testing.T) {
	// Once the arm is upright the plate pulls the other way and the rope is slack.
	e := evaluated(t, "slack")
	gaps := gapsOf(&e.Curve)
	if len(gaps) != 1 || gaps[0].words() != "no force: rope slack" {
		t.Fatalf("gaps %v, want one of slack rope", gaps)
	}
	if last := len(e.Curve.Travel) - 1; gaps[0].last != last || e.Curve.Has(gaps[0].first) || !e.Curve.Has(gaps[0].first-1) {
		t.Errorf("gap from %d to %d, want from the first position without a force to %d", gaps[0].first, gaps[0].last, last)
	}
	table := travelTable(e, Options{}.units())
	if cell := table.Rows[places-1][1]; cell != "slack rope" {
		t.Errorf("the last row says %q, want the reason", cell)
	}
	text := terminalText(t, e, 80, Options{})
	if !strings.Contains(text, "no force: rope slack.") {
		t.Errorf("the terminal does not name the gap:\n%s", text)
	}
}

func TestNumbersAreRoundedForReading(t *testing.T) {
	for _, row := range []struct {
		x    float64
		want string
	}{{0, "0.0"}, {-0.01, "0.0"}, {9.96, "10.0"}, {99.94, "99.9"}, {99.96, "100"}, {1234.5, "1235"}, {-45.67, "-45.7"}} {
		if got := decimal(row.x, columnPlaces(quantity.Newton, []float64{row.x})); got != row.want {
			t.Errorf("%g is written %q, want %q", row.x, got, row.want)
		}
	}
	for _, row := range []struct{ x, want float64 }{{0, 0}, {-3, 0}, {0.9, 0.5}, {1, 1}, {4.99, 2}, {5, 5}, {170, 100}, {math.NaN(), 0}} {
		if got := roundBelow(row.x); math.Abs(got-row.want) > 1e-12 {
			t.Errorf("roundBelow(%g) = %g, want %g", row.x, got, row.want)
		}
	}
	if got, want := bound("peaks at 87 N, 2.0 s in; 15 % of 3 arms"), "peaks at 87\u00a0N, 2.0\u00a0s in; 15\u00a0% of 3 arms"; got != want {
		t.Errorf("bound: got %q, want %q", got, want)
	}
}
