package checks

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"
)

// Triple is x, y, z in the ground frame of package human: z to the right of a
// person who faces +x.
type Triple [3]float64

// Limb is trunk and arm, or trunk and leg, in plain numbers, standing in the
// anatomical position, with the motions asked for. It is the JSON document that
// the engines of inverse dynamics read on standard input.
type Limb struct {
	Name     string    `json:"name"`
	Gravity  float64   `json:"gravity"` // m/s², towards -y
	Segments []Segment `json:"segments"`
	Motions  []Motion  `json:"motions"`
}

// Segment is one rigid segment, jointed to the one before it. Its joint is a
// row of hinges through one point, the first nearest the trunk, each turned by
// those before it; without any it is fixed.
type Segment struct {
	Joint   Triple   `json:"joint"`   // m, proximal
	Axes    []Triple `json:"axes"`    // unit, of the hinges
	Mass    float64  `json:"mass"`    // kg
	COM     Triple   `json:"com"`     // m
	Inertia Triple   `json:"inertia"` // kg m², about its own centre and the ground's axes
}

// Motion is one instant. Root is how far the first joint has moved, its
// velocity and its acceleration.
type Motion struct {
	Root          [3]Triple `json:"root"`          // m, m/s, m/s²
	Angles        []float64 `json:"angles"`        // rad, by hinge
	Rates         []float64 `json:"rates"`         // rad/s
	Accelerations []float64 `json:"accelerations"` // rad/s²
	Load          Load      `json:"load"`
}

// Load is what the machine does to a segment at a point given in the anatomical
// position. Force and moment have the ground's axes.
type Load struct {
	Segment int    `json:"segment"`
	At      Triple `json:"at"`     // m
	Force   Triple `json:"force"`  // N
	Moment  Triple `json:"moment"` // N m
}

// Answer is one segment of one motion: how it moves and what its inner
// neighbour does to it at its proximal joint.
type Answer struct {
	Joint  Triple    `json:"joint"`  // m
	COM    Triple    `json:"com"`    // m
	Omega  Triple    `json:"omega"`  // rad/s
	Alpha  Triple    `json:"alpha"`  // rad/s²
	Force  Triple    `json:"force"`  // N
	Moment Triple    `json:"moment"` // N m
	Hinges []float64 `json:"hinges"` // N m, the moment that works through each hinge's angle
}

// The engines of inverse dynamics.
var (
	SimbodyLimb = Engine{"Simbody", []string{"build/body"}}
	MuJoCoLimb  = Engine{"MuJoCo", []string{"node", "mujoco/limb.mjs"}}
)

// Inverse returns, for each motion, the answers by segment.
func (e Engine) Inverse(l Limb) ([][]Answer, error) {
	var out [][]Answer
	if err := e.ask(l.Name, l, &out); err != nil {
		return nil, err
	}
	if len(out) != len(l.Motions) {
		return nil, fmt.Errorf("checks: %s with %s: %d motions for %d asked", l.Name, e.Name, len(out), len(l.Motions))
	}
	return out, nil
}

func tripleOf(v r3.Vec) Triple { return Triple{v.X, v.Y, v.Z} }

func vectorOf(t Triple) r3.Vec { return r3.Vec{X: t[0], Y: t[1], Z: t[2]} }

// Hold is a machine and the arm that holds its handle, with the joint moments
// to be tried on both as one system.
type Hold struct {
	Machine  Case      `json:"machine"`
	Segments []Segment `json:"segments"` // the trunk first
	Root     Triple    `json:"root"`     // m, how far the trunk has moved
	Grip     Triple    `json:"grip"`     // m, in the anatomical position
	Handle   Triple    `json:"handle"`   // m, in the machine's measured pose
	Trunk    int       `json:"trunk"`    // how many hinges are the trunk's, which is held
	Instants []Instant `json:"instants"`
}

// Instant is the machine's driver and the limb's hinges at one time.
type Instant struct {
	At      float64   `json:"at"`      // rad or m
	Rate    float64   `json:"rate"`    // rad/s or m/s
	Angles  []float64 `json:"angles"`  // rad, by hinge, the trunk's included
	Rates   []float64 `json:"rates"`   // rad/s
	Moments []float64 `json:"moments"` // N m, by hinge of the arm
}

// Held is what becomes of one instant.
type Held struct {
	Gap    float64   `json:"gap"`    // m, between grip and handle
	Slip   float64   `json:"slip"`   // m/s, between them
	Force  Triple    `json:"force"`  // N, of the handle on the hand
	Driver float64   `json:"driver"` // rad/s² or m/s²
	Hinges []float64 `json:"hinges"` // rad/s², of the arm
	Loose  float64   `json:"loose"`  // the greatest acceleration of all without the moments
}

// SimbodyHold joins machine and arm.
var SimbodyHold = Engine{"Simbody", []string{"build/body", "joined"}}

// Hold returns what becomes of each instant.
func (e Engine) Hold(h Hold) (out []Held, err error) {
	if err := e.ask(h.Machine.Name, h, &out); err != nil {
		return nil, err
	}
	if len(out) != len(h.Instants) {
		return nil, fmt.Errorf("checks: %s with %s: %d instants for %d asked", h.Machine.Name, e.Name, len(out), len(h.Instants))
	}
	return out, nil
}
