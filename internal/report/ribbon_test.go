package report

import (
	"image/color"
	"math"
	"testing"

	"steelyard/internal/draw"
	"steelyard/planar"
)

func TestRibbonIsAsWideAsTheForce(t *testing.T) {
	for _, name := range []string{"level", "four-bar", "rough"} {
		e := evaluated(t, name)
		r := ribbonOf(e).place(draw.Frame{Origin: draw.Point{X: 50, Y: 90}, Scale: 60}, 14)
		for k := range r.base {
			on := r.frame.At(e.Sweep.Contact[e.Rows[k]])
			across := r.edge(k, e.Curve.Lift[k]).Sub(on)
			near(t, name+": width, mm", across.Norm(), 14*math.Abs(e.Curve.Lift[k])/r.full, 1e-9)
			along := draw.Towards(1, e.Sweep.Tangent[e.Rows[k]].Angle())
			near(t, name+": edge along the path, mm", across.X*along.X+across.Y*along.Y, 0, 1e-9)
		}
	}
}

func TestRibbonStandsOutsideAnArc(t *testing.T) {
	e := evaluated(t, "level")
	r := ribbonOf(e)
	for k, at := range r.base {
		if out := at.Sub(planar.Vec{Y: 1}); out.Unit().Dot(r.side[k]) < 1-1e-9 {
			t.Fatalf("position %d: side %v, want away from the axis", k, r.side[k])
		}
	}
}

// TestRibbonPixels measures the sign of the chain lift on paper: straight up, 5
// kg and 10 kg for each metre of chain off the floor, from 0.2 m to 1 m. The
// force is (5 + 10 h) g, so the width grows from 7 parts to 15.
func TestRibbonPixels(t *testing.T) {
	e := evaluated(t, "chain-lift")
	img, _, err := draw.Raster(Sign(e, Options{}), 600)
	if err != nil {
		t.Fatal(err)
	}
	fill := color.RGBAModel.Convert(ribbonFill(draw.Light)).(color.RGBA)
	widths := map[int]int{}
	top, bottom := img.Rect.Max.Y, 0
	for y := range img.Rect.Max.Y {
		for x := range img.Rect.Max.X {
			if img.RGBAAt(x, y) == fill {
				widths[y]++
				top, bottom = min(top, y), max(bottom, y)
			}
		}
	}
	perPart := 0.34 * signSide / 15 * 600 / 25.4 // pixels
	stroke := 0.3 * signSide / 8 * 600 / 25.4    // pixels the edge and the path may cover together
	for _, share := range []float64{0.15, 0.5, 0.85} {
		y := bottom - int(share*float64(bottom-top))
		want := (7 + 8*share) * perPart
		if got := float64(widths[y]); got > want+1 || got < want-stroke-1 {
			t.Errorf("%.0f %% of the way the ribbon is %g pixels wide, want %.1f less a line of up to %.1f", 100*share, got, want, stroke)
		}
	}
	// Ratios do not know the line's width when it is taken off both.
	a, b := widths[bottom-(bottom-top)/4], widths[bottom-3*(bottom-top)/4]
	near(t, "growth of the width from one quarter to three, pixels", float64(b-a), 4*perPart, 2)
}

func TestHelpStandsOnTheOtherSide(t *testing.T) {
	e := evaluated(t, "four-bar")
	r := ribbonOf(e).place(draw.Frame{Scale: 60}, 14)
	last := len(r.base) - 1
	if e.Curve.Lift[0] <= 0 || e.Curve.Lift[last] >= 0 {
		t.Fatalf("forces %g and %g N at the ends, want resisting, then helping", e.Curve.Lift[0], e.Curve.Lift[last])
	}
	for _, k := range []int{0, last} {
		out := r.edge(k, r.force[k]).Sub(r.frame.At(r.base[k]))
		same := out.X*r.side[k].X-out.Y*r.side[k].Y > 0
		if same != (r.force[k] > 0) {
			t.Errorf("at %g N the ribbon stands on the wrong side", r.force[k])
		}
	}
}

func TestSpikeIsCutNotScaledTo(t *testing.T) {
	e := evaluated(t, "dead-point")
	peak := 0.0
	var below []float64
	for k, f := range e.Curve.Lift {
		if e.Curve.Has(k) {
			peak = max(peak, f)
			below = append(below, f)
		}
	}
	full := ceiling(e)
	if full >= peak/2 {
		t.Fatalf("pictures are scaled to %g N, want far below the spike of %g N", full, peak)
	}
	over := 0
	for _, f := range below {
		if f > full {
			over++
		}
	}
	if share := float64(over) / float64(len(below)); share > 0.1 {
		t.Errorf("%.0f %% of the travel is cut, want at most 10 %%", 100*share)
	}
	r := ribbonOf(e).place(draw.Frame{Scale: 60}, 14)
	near(t, "width of the spike, mm", r.edge(0, peak).Sub(r.edge(0, 0)).Norm(), 14, 1e-9)
}

func TestSureAndUncertain(t *testing.T) {
	p := placed{ribbon: ribbon{low: []float64{80, -30, -20}, high: []float64{120, -10, 40}}}
	for k, want := range []float64{80, -10, 0} {
		if got := p.sure(k); got != want {
			t.Errorf("between %g and %g N, %g N are sure, want %g", p.low[k], p.high[k], got, want)
		}
	}
}
