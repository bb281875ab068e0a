package human

import "steelyard/reference"

// Links are the distances between joint centres and surfaces that a body in a
// machine is built from, all in metres. A tape does not reach joint centres;
// the shares below carry its landmarks over.
type Links struct {
	UpperArm    float64 // shoulder centre to elbow axis
	Forearm     float64 // elbow axis to wrist
	ElbowToGrip float64 // elbow axis to the middle of a gripped rod, wrist straight
	Hand        float64 // wrist to finger tip

	Thigh       float64 // hip centre to knee axis
	Shank       float64 // knee axis to ankle axis
	AnkleHeight float64 // sole to ankle axis
	Foot        float64 // heel to toe
	HeelToAnkle float64 // heel to below the ankle axis, along the sole
	HeelToBall  float64 // heel to the ball of the foot

	Trunk        float64 // line of the hips to line of the shoulders
	ShoulderHalf float64 // mid-body to shoulder centre
	HipHalf      float64 // mid-body to hip centre
	HipToCrown   float64 // line of the hips to the top of the head
	SeatToHip    float64 // seat to line of the hips, sitting
	BackToHip    float64 // back rest to line of the hips, sitting
}

// The shares and their standing.
const (
	// The shoulder centre lies 10.4 % of the upper arm (shoulder tip to elbow)
	// below the tip, the elbow axis 4.3 % above its landmark: de Leva 1996, J
	// Biomech 29:1231, from memory. Check: 0.853 of the survey's mean at the
	// stature of de Leva's Table 4 is 283 mm for men and women alike, the table
	// (two copies) has 281.7 and 275.1.
	shoulderBelowTip   = 0.104
	elbowAboveLandmark = 0.043

	// Working estimates without a source.
	elbowDepth  = 0.07 // of forearm to grip: back of the elbow to its axis
	ankleShare  = 0.25 // of foot length: heel to below the ankle
	hipShare    = 0.25 // of hip breadth: mid-body to hip centre
	kneeInFront = 0.06 // m: knee axis to the front of the bent knee
)

// LinkNotes tells, for a screen, which links rest on what besides the body
// dimensions they are taken from.
func LinkNotes() map[string]reference.Source {
	estimate := func(what string) reference.Source { return reference.Source{Text: what, Mark: reference.Estimate} }
	return map[string]reference.Source{
		"upper arm":        {Text: "joint centres 10.4 % and 4.3 % inside the landmarks, de Leva 1996 J Biomech 29:1231", Mark: reference.Memory},
		"elbow to grip":    estimate("elbow axis 7 % in front of the back of the elbow"),
		"heel to ankle":    estimate("ankle axis above a quarter of the foot from the heel"),
		"shoulder centres": estimate("below the bony tips of the shoulders"),
		"hip centres":      estimate("half the hip breadth apart, level with the bony point at the side of the hip"),
		"back to hip":      estimate("knee axis 60 mm behind the front of the bent knee"),
		"knee axis":        estimate("level with the bony point at the outer knee"),
	}
}

// LinksOf computes the links from body dimensions.
func LinksOf(d reference.Dimensions) Links {
	hipHeight := d[reference.AnkleHeight] + d[reference.Shank] + d[reference.Thigh]
	return Links{
		UpperArm:    (1 - shoulderBelowTip - elbowAboveLandmark) * d[reference.UpperArm],
		Forearm:     d[reference.Forearm],
		ElbowToGrip: (1 - elbowDepth) * d[reference.ForearmGrip],
		Hand:        d[reference.Hand],

		Thigh:       d[reference.Thigh],
		Shank:       d[reference.Shank],
		AnkleHeight: d[reference.AnkleHeight],
		Foot:        d[reference.Foot],
		HeelToAnkle: ankleShare * d[reference.Foot],
		HeelToBall:  d[reference.HeelToBall],

		Trunk:        d[reference.Trunk] - shoulderBelowTip*d[reference.UpperArm],
		ShoulderHalf: d[reference.ShoulderBreadth] / 2,
		HipHalf:      hipShare * d[reference.HipBreadth],
		HipToCrown:   d[reference.Stature] - hipHeight,
		SeatToHip:    d[reference.SittingHeight] - d[reference.Stature] + hipHeight,
		BackToHip:    d[reference.ButtockKnee] - d[reference.Thigh] - kneeInFront,
	}
}
