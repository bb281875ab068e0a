package evaluation

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"

	"steelyard/mechanism"
	"steelyard/profile"
	"steelyard/sheet"
)

// pressSheet is a frictionless lever whose curve is a closed form.
const pressSheet = `steelyard: machine 1
name: Bare lever
points:
  axis: [0, 0]
  horn: [620 ± 6, 0]
  grip: [1050 ± 4, 0]
links:
  ground: [axis]
  arm: {points: [axis, horn, grip], mass: 0 kg}
loads:
  plates: {kind: plates, at: horn, mass: 60 kg ± 0.5}
contact: {kind: grip, at: grip}
travel: {turn: arm, from: 0 deg, to: 80 deg}
`

func run(t testing.TB, text string, o Options) *Evaluation {
	t.Helper()
	return runSet(t, parsed(t, "test.yaml", []byte(text)), nil, o)
}

func parsed(t testing.TB, file string, data []byte) *sheet.Document {
	t.Helper()
	d, err := sheet.Read(file, data)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// runSet evaluates a machine with settings.
func runSet(t testing.TB, d *sheet.Document, choice map[string]string, o Options) *Evaluation {
	t.Helper()
	m, err := d.Machine()
	if err != nil {
		t.Fatal(err)
	}
	b, err := m.Build(choice)
	if err != nil {
		t.Fatal(err)
	}
	e, err := Run(context.Background(), m, b, o)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// TestLeverReadings holds the readings of a bare lever against closed forms: by
// the law of the lever F(θ) = m·g·a/b·cos θ over an arc of b·80°.
func TestLeverReadings(t *testing.T) {
	e := run(t, pressSheet, Options{Positions: 401})
	r := e.Readings[profile.Holding]
	peak := 60 * mechanism.Gravity * 0.62 / 1.05
	end := 80 * math.Pi / 180
	for _, c := range []struct {
		what           string
		got, want, tol float64
	}{
		{"peak, N", r.Peak.Force, peak, 1e-6},
		{"peak at", r.Peak.Share, 0, 1e-9},
		{"end, N", r.End.Force, peak * math.Cos(end), 1e-6},
		{"travel, m", r.Length, 1.05 * end, 1e-9},
		{"work, J", r.Work, 60 * mechanism.Gravity * 0.62 * math.Sin(end), 1e-3},
		{"lift ratio", r.LiftRatio, 0.62 / 1.05, 1e-9},
		{"lengthened mean, N", r.Thirds[0].Mean, peak * math.Sin(end/3) / (end / 3), 1e-2},
	} {
		if math.Abs(c.got-c.want) > c.tol {
			t.Errorf("%s: got %.9g, want %.9g", c.what, c.got, c.want)
		}
	}
	if r.Loads != profile.AtStart {
		t.Errorf("loads %v, want at the start: a plate on a lever loads most where its level distance is greatest (common practice, no source)", r.Loads)
	}
}

// TestBandsAgree holds the two roads to the band against each other and
// against the closed form: relative variances of m, a and b add up
// (JCGM 100:2008 eq. 12).
func TestBandsAgree(t *testing.T) {
	e := run(t, pressSheet, Options{Draws: 1024})
	linear, err := e.Linear()
	if err != nil {
		t.Fatal(err)
	}
	relative := math.Sqrt(math.Pow(0.5/60, 2) + math.Pow(6.0/620, 2) + math.Pow(4.0/1050, 2))
	for _, share := range []float64{0, 0.5, 0.9} {
		i := int(share * 100)
		want := relative * e.Curve.Hold[i]
		if got := linear.Between[i].Half(); math.Abs(got-want) > 0.01*want {
			t.Errorf("linear half-width at %.1f: got %.4g N, want %.4g N", share, got, want)
		}
		if got := e.Band.Between[i].Half(); math.Abs(got-want) > 0.05*want {
			t.Errorf("sampled half-width at %.1f: got %.4g N, want %.4g N", share, got, want)
		}
	}
	n, ok := e.Band.Dominant()
	if !ok || !strings.HasPrefix(n.Measurement.Name, "horn") {
		t.Errorf("measure first: got %q, want the horn, whose 6 mm in 620 weigh most", n.Measurement.Name)
	}
}

// TestHeadlineNamesTheLength wants the reason with its number.
func TestHeadlineNamesTheLength(t *testing.T) {
	e := run(t, pressSheet, Options{Draws: -1})
	words := e.Words(Metric{})
	for _, want := range []string{"Hardest at the start: 347 N", "620 mm in front of the axis", "at the end"} {
		if !strings.Contains(words[0], want) {
			t.Errorf("headline %q lacks %q", words[0], want)
		}
	}
	if imperial := e.Words(Imperial{})[0]; !strings.Contains(imperial, "24.4 in") {
		t.Errorf("imperial headline %q lacks 24.4 in", imperial)
	}
}

func TestCancelStopsTheBand(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	e := evaluated(t, Options{Draws: -1})
	if _, err := Run(ctx, e.Sheet, e.Built, Options{}); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v, want %v", err, context.Canceled)
	}
}

func TestNoForceSaysWhere(t *testing.T) {
	text := strings.Replace(pressSheet, "to: 80 deg", "to: 400 deg", 1)
	e := run(t, text, Options{Draws: -1})
	if e.Readings[profile.Lifting].Helps == 0 {
		t.Error("a lever turned right round must help on the far side")
	}
}

// A sled of 100 kg on rails of 45° with friction: lifting takes
// m·g·(sin 45° + µ·cos 45°), and the relative errors of m and µ add up by the
// root sum of squares (JCGM 100:2008 eq. 10).
const sledSheet = `steelyard: machine 1
name: Sled
points:
  low: [0, 0]
  high: [1000, 1000]
  plate: [0, 0]
links:
  ground: [low, high]
  sled: [plate]
slides:
  sled: {along: [low, high], at: plate, friction: 0.12 ± 0.03}
loads:
  plates: {kind: plates, at: plate, mass: 100 ± 2 kg}
contact: {kind: foot plate, at: plate, on: sled}
travel: {slide: sled, from: 0, to: 500}
`

func TestBandOfLiftingWithFriction(t *testing.T) {
	e := run(t, sledSheet, Options{Draws: -1})
	b, err := e.Linear()
	if err != nil {
		t.Fatal(err)
	}
	const m, µ, slope = 100, 0.12, math.Pi / 4
	weight := mechanism.Gravity * (math.Sin(slope) + µ*math.Cos(slope))
	want := math.Hypot(2*weight, m*mechanism.Gravity*math.Cos(slope)*0.03)
	if b.Phase != profile.Lifting {
		t.Fatalf("the band is of %v", b.Phase)
	}
	for i, in := range b.Between {
		if math.Abs(b.Force[i]-m*weight) > 1e-6*m*weight || math.Abs(in.Half()-want) > 1e-3*want {
			t.Fatalf("at position %d: %.6g N ± %.5g, want %.6g ± %.5g", i, b.Force[i], in.Half(), m*weight, want)
		}
	}
}

// Only a caller that left the band out for good hears of it.
func TestUnsaid(t *testing.T) {
	e := run(t, pressSheet, Options{Draws: -1})
	const said = "The error band was left out"
	if got := strings.Join(e.Words(Metric{}), " "); !strings.Contains(got, said) {
		t.Errorf("a report without band does not say so: %s", got)
	}
	e.BandToCome = true
	if got := strings.Join(e.Words(Metric{}), " "); strings.Contains(got, said) {
		t.Errorf("of a band to come it is said: %s", got)
	}
}

// 1 lb = 0.45359237 kg, 1 in = 25.4 mm (NIST SP 811, B.8).
func TestBeside(t *testing.T) {
	for _, c := range []struct {
		text string
		f    Formatter
		want string
	}{
		{"40 kg", Imperial{}, "40 kg (88 lb)"}, // 88.18
		{"2.5 kg", Imperial{}, "2.5 kg (5.5 lb)"},
		{"45 lb", Metric{}, "45 lb (20.4 kg)"},
		{"160 mm", Imperial{}, "160 mm (6.3 in)"},
		{"40 kg", Metric{}, "40 kg"},
		{"45 lb", Imperial{}, "45 lb"},
		{"middle", Imperial{}, "middle"},
		{"3", Imperial{}, "3"},
		{"30 deg", Imperial{}, "30 deg"},
	} {
		if got := Beside(c.text, c.f); got != c.want {
			t.Errorf("%q: got %q, want %q", c.text, got, c.want)
		}
	}
}

func TestSide(t *testing.T) {
	mirrored := strings.Replace(pressSheet, "travel:", "plane: {mirrored: yes}\ntravel:", 1)
	for text, want := range map[string]string{
		pressSheet: "", mirrored: "one side",
		mirrored + "station: {serves: leg press, seat: axis}\n":   "one leg",
		mirrored + "station: {serves: chest press, seat: axis}\n": "one arm",
	} {
		e := run(t, text, Options{Draws: -1})
		if got := e.Side(); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
		if told := strings.Contains(e.Words(Metric{})[1], "every force is that of "+want); want != "" && !told {
			t.Errorf("the second of the words does not say whose the force is: %q", e.Words(Metric{}))
		}
	}
}
