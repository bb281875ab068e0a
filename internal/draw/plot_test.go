package draw

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

func TestTicks(t *testing.T) {
	for _, c := range []struct {
		name   string
		lo, hi float64
		most   int
		want   string
	}{
		{"hundreds", 0, 300, 6, "0 100 200 300"},
		{"decimals as the step", 0, 0.62, 6, "0.0 0.2 0.4 0.6"},
		{"twenties", 0, 100, 6, "0 20 40 60 80 100"},
		{"fifties", 0, 101, 6, "0 50 100"},
		{"true minus", -10, 10, 6, "−10 −5 0 5 10"},
		{"starts between", 7, 23, 6, "10 15 20"},
		{"small", 0.001, 0.0034, 6, "0.0010 0.0015 0.0020 0.0025 0.0030"},
		{"no range", 3, 3, 6, ""},
		{"not a number", math.NaN(), 3, 6, ""},
	} {
		var labels []string
		for _, k := range Ticks(c.lo, c.hi, c.most) {
			labels = append(labels, k.Label)
		}
		if got := strings.Join(labels, " "); got != c.want {
			t.Errorf("%s: ticks %q, want %q", c.name, got, c.want)
		}
	}
}

// Any range gets between one and six marks, inside it, evenly spaced by 1, 2
// or 5 times a power of ten.
func TestTicksProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 5000 {
		lo := (r.Float64() - 0.5) * math.Pow(10, 6*r.Float64()-3)
		hi := lo + math.Pow(10, 8*r.Float64()-4)
		ticks := Ticks(lo, hi, 6)
		if len(ticks) < 1 || len(ticks) > 6 {
			t.Fatalf("%g to %g: %d ticks, want 1 to 6", lo, hi, len(ticks))
		}
		for i, k := range ticks {
			if slack := 1e-6 * (hi - lo); k.Value < lo-slack || k.Value > hi+slack {
				t.Errorf("%g to %g: tick %g lies outside", lo, hi, k.Value)
			}
			if i == 0 {
				continue
			}
			step := k.Value - ticks[i-1].Value
			mantissa := step / math.Pow(10, math.Floor(math.Log10(step)+1e-6))
			if d := math.Min(math.Abs(mantissa-1), math.Min(math.Abs(mantissa-2), math.Abs(mantissa-5))); d > 1e-4 {
				t.Errorf("%g to %g: step %g is not 1, 2 or 5 times a power of ten", lo, hi, step)
			}
			if k.Label == ticks[i-1].Label {
				t.Errorf("%g to %g: label %q twice", lo, hi, k.Label)
			}
		}
	}
}

func TestAxis(t *testing.T) {
	nan := math.NaN()
	a := Span("Force", "N", []float64{nan, 182, 262}, []float64{171, math.Inf(1)})
	if a.Lo != 171 || a.Hi != 262 {
		t.Errorf("span %g to %g, want 171 to 262", a.Lo, a.Hi)
	}
	if r := a.Round(); r.Lo != 150 || r.Hi != 300 { // steps of 20 would need 7 marks
		t.Errorf("rounded %g to %g, want 150 to 300", r.Lo, r.Hi)
	}
	if z := a.FromZero().Round(); z.Lo != 0 || z.Hi != 300 {
		t.Errorf("from zero %g to %g, want 0 to 300", z.Lo, z.Hi)
	}
	if got := a.label(); got != "Force (N)" {
		t.Errorf("label %q, want quantity and unit", got)
	}
	for name, odd := range map[string]Axis{
		"empty":       Span("", ""),
		"one value":   Span("", "", []float64{7}),
		"upside down": {Lo: 3, Hi: -3},
		"huge":        {Lo: -math.MaxFloat64, Hi: math.MaxFloat64},
		"nan":         {Lo: nan, Hi: nan},
	} {
		if u := odd.Round(); !(u.Hi > u.Lo) || math.IsInf(u.Hi-u.Lo, 0) {
			t.Errorf("%s: axis %g to %g cannot be drawn", name, u.Lo, u.Hi)
		}
	}
}

func TestPlotMapsValuesToItsArea(t *testing.T) {
	s := New("", Light)
	p := s.AddPage(A4)
	box := Rect{20, 30, 120, 80}
	pl := p.Plot(box, Axis{Quantity: "Travel", Unit: "m", Lo: 0, Hi: 0.5}, Axis{Quantity: "Force", Unit: "N", Lo: 100, Hi: 300})
	a := pl.Area
	if a.X < box.X || a.Y < box.Y || a.Right() > box.Right() || a.Bottom() > box.Bottom() {
		t.Errorf("area %v leaves its box %v", a, box)
	}
	for _, c := range []struct {
		x, y float64
		want Point
	}{
		{0, 100, Point{a.X, a.Bottom()}},
		{0.5, 300, Point{a.Right(), a.Y}},
		{0.25, 200, a.Centre()},
	} {
		if got := pl.At(c.x, c.y); got.Sub(c.want).Norm() > 1e-9 {
			t.Errorf("(%g, %g) falls at %v, want %v", c.x, c.y, got, c.want)
		}
	}
	text := texts(p)
	for _, want := range []string{"Force (N)", "Travel (m)", "0.5", "300"} {
		if !strings.Contains(text, want+"\n") {
			t.Errorf("no %q on the axes; text is\n%s", want, text)
		}
	}
	for _, o := range p.ops {
		if o, ok := o.(textOp); ok && (o.at.X < box.X-1e-9 || o.at.X+o.font.width(o.text) > box.Right()+1e-9) {
			t.Errorf("%q from %.2f mm, %.2f mm wide, leaves the box", o.text, o.at.X, o.font.width(o.text))
		}
	}
}

// texts lists the lines of text on a page, one per line, in order.
func texts(p *Page) string {
	var b strings.Builder
	var walk func([]op)
	walk = func(list []op) {
		for _, o := range list {
			switch o := o.(type) {
			case textOp:
				b.WriteString(o.text + "\n")
			case clipOp:
				walk(o.ops)
			case layerOp:
				walk(o.ops)
			}
		}
	}
	walk(p.ops)
	return b.String()
}

func TestCurveLeavesGaps(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		name   string
		xs, ys []float64
		want   [][2]int
	}{
		{"whole", []float64{0, 1, 2}, []float64{5, 5, 5}, [][2]int{{0, 3}}},
		{"gap inside", []float64{0, 1, 2, 3}, []float64{5, nan, 5, 5}, [][2]int{{0, 1}, {2, 4}}},
		{"infinite is a gap", []float64{0, 1}, []float64{math.Inf(-1), 1}, [][2]int{{1, 2}}},
		{"gap in x", []float64{nan, 1}, []float64{1, 1}, [][2]int{{1, 2}}},
		{"shorter slice rules", []float64{0, 1, 2}, []float64{5}, [][2]int{{0, 1}}},
		{"nothing", nil, nil, nil},
	} {
		got := runs(c.xs, c.ys)
		if len(got) != len(c.want) {
			t.Errorf("%s: stretches %v, want %v", c.name, got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%s: stretches %v, want %v", c.name, got, c.want)
			}
		}
	}
}
