package draw

import (
	"math"
	"reflect"
	"testing"
)

// Expected ratios follow from the definitions of WCAG 2.1 with the luminance
// of a pure primary being its coefficient.
func TestContrast(t *testing.T) {
	white := rgb(0xffffff)
	for _, c := range []struct {
		name string
		a, b Color
		want float64
	}{
		{"black on white", rgb(0), white, 1.05 / 0.05},
		{"order does not matter", white, rgb(0), 21},
		{"same colour", rgb(0x336699), rgb(0x336699), 1},
		{"red on white", rgb(0xff0000), white, 1.05 / (0.2126 + 0.05)},
		{"green on white", rgb(0x00ff00), white, 1.05 / (0.7152 + 0.05)},
		{"blue on white", rgb(0x0000ff), white, 1.05 / (0.0722 + 0.05)},
		// 8/255 = 0.0314 lies on the straight part of the transfer curve.
		{"dark grey on black", rgb(0x080808), rgb(0), (8.0/255/12.92 + 0.05) / 0.05},
		// The grey that just passes 4.5 on white is #767676 with 4.54; from memory.
		{"least grey for text", rgb(0x767676), white, 4.54},
	} {
		if got := Contrast(c.a, c.b); math.Abs(got-c.want) > 0.005 {
			t.Errorf("%s: contrast %.3f, want %.3f", c.name, got, c.want)
		}
	}
}

// Every role may carry small text, so every role needs 4.5:1 (WCAG 2.1,
// success criterion 1.4.3), which covers the 3:1 of graphics (1.4.11).
func TestThemesKeepContrast(t *testing.T) {
	for name, th := range map[string]Theme{"light": Light, "dark": Dark} {
		v := reflect.ValueOf(th)
		for i := range v.NumField() {
			role := v.Type().Field(i).Name
			if role == "Paper" {
				continue
			}
			if got := Contrast(v.Field(i).Interface().(Color), th.Paper); got < 4.5 {
				t.Errorf("%s %s: contrast %.2f on paper, want at least 4.5", name, role, got)
			}
		}
		caution := mix(Alpha(th.Warn, 0.08), th.Paper)
		if got := Contrast(th.Ink, caution); got < 4.5 {
			t.Errorf("%s: contrast %.2f of ink in a caution, want at least 4.5", name, got)
		}
		zone := mix(Alpha(th.Faint, 0.12), th.Paper)
		for role, c := range map[string]Color{"ink": th.Ink, "lift": th.Lift, "lower": th.Lower, "hold": th.Hold} {
			if got := Contrast(c, zone); got < 3 {
				t.Errorf("%s %s: contrast %.2f in a shaded zone, want at least 3", name, role, got)
			}
		}
	}
}

// mix lays top over an opaque ground: the "over" of Porter & Duff (1984).
func mix(top, ground Color) Color {
	a := float64(top.A) / 255
	over := func(t, g uint8) uint8 { return uint8(math.Round(a*float64(t) + (1-a)*float64(g))) }
	return Color{R: over(top.R, ground.R), G: over(top.G, ground.G), B: over(top.B, ground.B), A: 255}
}

func TestAlpha(t *testing.T) {
	for _, c := range []struct {
		a    float64
		want uint8
	}{{0, 0}, {0.5, 128}, {1, 255}, {-1, 0}, {7, 255}} {
		if got := Alpha(rgb(0), c.a).A; got != c.want {
			t.Errorf("opacity %g: %d, want %d", c.a, got, c.want)
		}
	}
}
