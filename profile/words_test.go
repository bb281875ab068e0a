package profile

import (
	"errors"
	"strings"
	"testing"
)

func TestFormatters(t *testing.T) {
	for _, tt := range []struct{ got, want string }{
		{Metric{}.Force(312.4), "312 N"}, {Metric{}.Force(-0.04), "0 N"}, {Metric{}.Force(9.96), "10 N"}, {Metric{}.Force(9.04), "9 N"},
		{Metric{}.Length(0.62), "62 cm"}, {Metric{}.Length(1.5), "1.50 m"}, {Metric{}.Work(143.2), "143 J"}, {Metric{}.Mass(42.46), "42.5 kg"},
		// 1 lbf = 4.4482216152605 N, 1 ft·lbf = 1.3558179483314 J: NIST SP 811, B.8.
		{Imperial{}.Force(444.82216152605), "100 lbf"}, {Imperial{}.Work(135.58179483314), "100 ft·lbf"},
		{Imperial{}.Length(0.6223), "24.5 in"}, {Imperial{}.Mass(20.4116567), "45 lb"},
		{percent(0.614), "61 %"},
	} {
		if tt.got != tt.want {
			t.Errorf("got %q, want %q", tt.got, tt.want)
		}
	}
}

// The figures are read off the drawing of each line: forces at its ends, means
// of its thirds at 1/6, 1/2 and 5/6 of the way, work as mean times travel.
func TestWords(t *testing.T) {
	falling := over(0.6, 7, func(u float64) float64 { return 312 - 172*u })
	rubbing := falling.Clone()
	rubbing.Lift, rubbing.Lower = mapForce(falling, func(f float64) float64 { return f + 20 }).Hold, mapForce(falling, func(f float64) float64 { return f - 20 }).Hold
	rubbing.Load = over(0.6, 7, func(u float64) float64 { return 0.3 * u }).Hold
	hill := over(0.6, 7, func(u float64) float64 { return 300 - 800*(u-0.5)*(u-0.5) })
	broken := falling.Clone()
	broken.Gap = []Reason{DeadPoint, DeadPoint, None, None, None, None, None}
	tests := []struct {
		name string
		c    Curve
		f    Formatter
		want []string
	}{
		{"falling", falling, Metric{}, []string{
			"Hardest at the start: 312 N; lets off to 140 N at the end.",
			"Loads the start: on average 283 N in the lengthened third, 226 N in the middle, 169 N in the shortened.",
			"On average 226 N over 60 cm of travel; one lift takes 136 J of work."}},
		{"falling, imperial", falling, Imperial{}, []string{ // 312 N = 70.1 lbf, 140 N = 31.5 lbf, 0.6 m = 23.6 in, 135.6 J = 100.0 ft·lbf
			"Hardest at the start: 70 lbf; lets off to 31 lbf at the end.",
			"Loads the start: on average 64 lbf in the lengthened third, 51 lbf in the middle, 38 lbf in the shortened.",
			"On average 51 lbf over 23.6 in of travel; one lift takes 100 ft·lbf of work."}},
		{"with friction", rubbing, Metric{}, []string{ // 20 N each way over 0.6 m: 12 J up, 12 J down
			"Hardest at the start: 312 N; lets off to 140 N at the end.",
			"Loads the start: on average 283 N in the lengthened third, 226 N in the middle, 169 N in the shortened.",
			"On average 226 N over 60 cm of travel; one lift takes 148 J of work.",
			"Lift ratio 0.50: the load travels 0.50 times as far as the contact.",
			"Friction takes 24 J of every repetition: lowering gives back 124 J of the 148 J that lifting took."}},
		{"hill", hill, Metric{}, []string{ // 100, 211.1, 277.8, 300 N at 0, 1/6, 1/3, 1/2: thirds (100 + 2·211.1 + 277.8)/4 and (2·277.8 + 2·300)/4
			"Hardest 50 % of the way: 300 N; up from 100 N at the start, down to 100 N at the end.",
			"Loads the middle: on average 200 N in the lengthened third, 289 N in the middle, 200 N in the shortened.",
			"On average 230 N over 60 cm of travel; one lift takes 138 J of work."}},
		{"even", over(0.6, 3, func(u float64) float64 { return 200 + 3*u }), Metric{}, []string{
			"Even throughout: from 200 N to 203 N.",
			"Loads the whole travel alike: on average 201 N in the lengthened third, 202 N in the middle, 203 N in the shortened.",
			"On average 202 N over 60 cm of travel; one lift takes 121 J of work."}},
		{"broken", broken, Metric{}, []string{ // from u = 1/3 on: 254.7 to 140 N over 0.4 m
			"Hardest 33 % of the way: 255 N; lets off to 140 N at the end.",
			"On average 197 N over 40 cm of travel; one lift takes 79 J of work.",
			"Over 33 % of the travel there is no force to read; nothing is said about it."}},
		{"helping", over(1, 2, func(u float64) float64 { return 100 - 150*u }), Metric{}, []string{
			"Hardest at the start: 100 N; lets off to -50 N at the end.",
			"Loads the start: on average 75 N in the lengthened third, 25 N in the middle, -25 N in the shortened.",
			"On average 25 N over 1.00 m of travel; one lift takes 25 J of work.",
			"Over 33 % of the travel the machine moves the person instead of resisting."}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			sameLines(t, Words(mustRead(t, tt.c), tt.f), tt.want)
		})
	}
}

func sameLines(t *testing.T, got, want []string) {
	t.Helper()
	if g, w := strings.Join(got, "\n"), strings.Join(want, "\n"); g != w {
		t.Errorf("got\n%s\nwant\n%s", g, w)
	}
}

// Of the tilted line no place is sure; of the surely falling one it is.
func TestWordsWeaken(t *testing.T) {
	b := mustSample(t, []Measurement{{"the tilt", 0, 0.2, "1"}}, tilted, Sampling{})
	got := strings.Join(b.Words(Metric{}), "\n")
	for _, part := range []string{
		"Hardest somewhere from the start to the end: ",
		"Can't tell whether it loads evenly or it loads the", // 55 %, 23 %, 23 %
		"55 % load evenly, 23 % load the",
		"Measure the tilt again first: known exactly it would narrow the band from ±",
	} {
		if !strings.Contains(got, part) {
			t.Errorf("%q is missing from\n%s", part, got)
		}
	}
	b = mustSample(t, []Measurement{{"the tilt", 0.3, 0.02, "1"}}, tilted, Sampling{})
	got = strings.Join(b.Words(Metric{}), "\n")
	for _, part := range []string{
		"Hardest at the start: 130 N (128 N to 132 N); starts at 130 N (128 N to 132 N), ends at 70 N (68 N to 72 N).",
		"Loads the start: on average 120 N (119 N to 121 N) in the lengthened third",
	} {
		if !strings.Contains(got, part) {
			t.Errorf("%q is missing from\n%s", part, got)
		}
	}
}

func TestWordsOfFailuresAndGaps(t *testing.T) {
	f := func(v []float64, _ int) (Curve, error) {
		if v[0] < -2 {
			return Curve{}, errors.New("the links cannot meet")
		}
		c := over(1, 11, func(u float64) float64 { return 100 })
		c.Gap = make([]Reason, 11)
		if v[0] > 0 {
			for i := 5; i < 11; i++ {
				c.Gap[i] = Slack
			}
		}
		return c, nil
	}
	b := mustSample(t, []Measurement{{"rope length", -0.5, 2, "m"}}, f, Sampling{})
	got := strings.Join(b.Words(Metric{}), "\n")
	for _, part := range []string{
		"or enough of the travel has a force to say: of the machines",
		"of 2000 machines within the measurements could not be put together and are left out.",
		"About 50 % of the way some of the possible machines have no force to read; the range there leaves them out.",
	} {
		if !strings.Contains(got, part) {
			t.Errorf("%q is missing from\n%s", part, got)
		}
	}
}

func TestMatchWords(t *testing.T) {
	for _, tt := range []struct {
		m    Match
		want string
	}{
		{Match{By: Mean, Want: 228, Load: 41.8, Nearest: 42.5, Got: 230}, "Put on 42.5 kg (41.8 kg to be exact): with 42.5 kg the mean force over the travel is 230 N, 228 N is wanted."},
		{Match{By: PeakForce, Want: 100, Outcome: TooHard, Load: -8, Got: 180}, "Too hard even bare: with 0 kg the peak force is 180 N, 100 N is wanted; 8 kg would have to come off the machine itself."},
		{Match{By: PeakForce, Want: 100, Outcome: TooHard, Load: 3, Nearest: 5, Got: 120}, "Too hard with every load there is: with 5 kg the peak force is 120 N, 100 N is wanted; 3 kg would be needed."},
		{Match{By: MiddleMean, Want: 900, Outcome: TooEasy, Load: 130, Nearest: 100, Got: 700}, "Too easy with every load there is: with 100 kg the mean force in the middle third is 700 N, 900 N is wanted; 130 kg would be needed."},
		{Match{By: Mean, Want: 200, Outcome: TooEasy, Load: -10, Got: 150}, "Too easy even with as little relief as there is: with 0 kg the mean force over the travel is 150 N, 200 N is wanted."},
		{Match{By: Mean, Want: 200, Outcome: Unreachable, Got: 150}, "No load does it: with 0 kg the mean force over the travel is 150 N, 200 N is wanted."},
	} {
		if got := tt.m.Words(Metric{}); got != tt.want {
			t.Errorf("got  %s\nwant %s", got, tt.want)
		}
	}
}

// The lines of TestCompareLines, by their shares: thirds of 100 + 100 u at
// 1/6, 1/2, 5/6 are 116.7, 150, 183.3 N, those of 250 - 200 u are 216.7, 150,
// 83.3 N.
func TestComparisonWords(t *testing.T) {
	a := over(1, 4, func(u float64) float64 { return 100 + 100*u })
	b := over(2, 7, func(u float64) float64 { return 250 - 200*u })
	sameLines(t, mustCompare(t, a, b).Words("The press", "the bench", Metric{}), []string{
		"On average The press asks for 150 N, the bench for 150 N.",
		"the bench asks for 100 N more in the lengthened third, 0 N more in the middle, 100 N less in the shortened.",
		"They are furthest apart at the start: The press 100 N, the bench 250 N.",
		"They meet 50 % of the way at 150 N; beyond that The press is harder.",
		"Likeness of shape -1.00, where 1 is the same shape and -1 its mirror image.",
	})
	b.Gap = []Reason{Slack, Slack, Slack, Slack, Slack, Slack, Slack}
	sameLines(t, mustCompare(t, a, b).Words("A", "B", Metric{}),
		[]string{"A and B have no force at the same part of the travel; they can't be compared."})
}
