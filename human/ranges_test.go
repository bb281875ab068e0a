package human

import (
	"strings"
	"testing"

	"steelyard/reference"
)

func TestRangesOfAWoman(t *testing.T) {
	r := bodyOf(t, Person{Height: 1.65, Mass: 62, Sex: reference.Female, Age: 30}).Ranges
	for _, c := range []struct {
		at   Coordinate
		a, b float64 // degrees
		mark reference.Mark
	}{
		{KneeFlexion, -1.6, 141.9, reference.Retrieved},    // Soucie 2011; hyperextension from memory
		{ElbowFlexion, -4.7, 150.0, reference.Retrieved},   // the same
		{AnkleDorsiflexion, -62.1, 13.8, reference.Memory}, // the same
		{ShoulderFlexion, -60, 172.0, reference.Retrieved}, // extension AAOS
		{ShoulderRotation, -70, 90, reference.Retrieved},   // AAOS
	} {
		near(t, c.at.String()+" from", r[c.at].Min.Angle.Degrees(), c.a, 1e-9)
		near(t, c.at.String()+" to", r[c.at].Max.Angle.Degrees(), c.b, 1e-9)
		if r[c.at].Max.Source.Mark != c.mark {
			t.Errorf("%v: mark %v", c.at, r[c.at].Max.Source.Mark)
		}
	}
}

func TestOwnLimitsBreach(t *testing.T) {
	b := bodyOf(t, Person{Height: 1.65, Mass: 62, Sex: reference.Female, Age: 30, Limits: []Limit{{KneeFlex, degrees(100)}, {KneeExtend, degrees(-5)}}})
	if got := b.Ranges.CheckLeg(LegAngles{Knee: degrees(90)}); len(got) != 0 {
		t.Errorf("inside: %v", got)
	}
	got := b.Ranges.CheckLeg(LegAngles{Knee: degrees(112)})
	if len(got) != 1 || got[0].Motion != KneeFlex || !strings.Contains(got[0].String(), "12° past the limit of 100°") {
		t.Errorf("too far: %v", got)
	}
	got = b.Ranges.CheckLeg(LegAngles{Knee: 0})
	if len(got) != 1 || got[0].Motion != KneeExtend {
		t.Fatalf("too straight: %v", got)
	}
	near(t, "past the own limit", got[0].Beyond().Degrees(), 5, 1e-9)
}

// AAOS: 180° forward and to the side, 60° behind; 45° across from memory.
func TestElevationLimits(t *testing.T) {
	r := bodyOf(t, Person{Height: 1.75, Mass: 75}).Ranges
	for _, c := range []struct{ plane, want float64 }{{90, 180}, {0, 180}, {45, 180}, {-90, 60}, {180, 45}} {
		near(t, "elevation limit", r.Elevation(degrees(c.plane)).Angle.Degrees(), c.want, 1e-9)
	}
	breach := r.CheckArm(ArmAngles{Elevation: degrees(80), Plane: degrees(-90)})
	if len(breach) == 0 || breach[0].Motion != ShoulderExtend {
		t.Errorf("80° behind the body: %v", breach)
	}
	if got := r.CheckArm(ArmAngles{Elevation: degrees(90), Plane: degrees(-46)}); len(got) == 0 {
		t.Error("46° behind the frontal plane with the arm level passes (45° is the limit)")
	}
}
