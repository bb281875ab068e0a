package sheet

import (
	"steelyard/mechanism"
	"steelyard/planar"
)

// A plan is a machine sheet with its names resolved and its numbers counted:
// all that is left to do for a machine is arithmetic. See build.go.
type plan struct {
	name     string
	numbers  []number
	points   []point
	moves    []move
	links    []link // the first is the ground
	joints   []joint
	ropes    []rope
	outlines []outline
	elements []element
	weights  []weight
	chains   []chain
	wheels   []wheel
	drive    drive
	contact  contact
	plane    plane
	station  *placing // nil if the sheet has none

	overruled []overruled
}

// overruled is a number that a setting replaces by another one.
type overruled struct{ path, now, written string }

type (
	pointID   int
	linkID    = mechanism.LinkID
	jointID   int
	outlineID int
)

const (
	nowhere   pointID   = -1
	noJoint   jointID   = -1
	noOutline outlineID = -1
)

// point is a measured point, or the centre of the circle through three.
type point struct {
	name   string
	x, y   num
	circle [3]pointID // used if round; the first is not the point itself
	round  bool
	used   bool // something refers to it
	at     *node
}

// move is what a setting does to points: a shift along a direction, or a turn
// about a point.
type move struct {
	points []pointID
	amount num
	along  direction
	about  pointID // nowhere for a shift
}

// direction is from one point to another, or an angle from forward,
// counter-clockwise.
type direction struct {
	from, to pointID // used if from is somewhere
	angle    num     // else if given
	fixed    float64 // else, rad
}

type link struct {
	name    string
	points  []pointID
	mass    num
	center  pointID // nowhere: half-way between the ends
	inertia num     // none: of a uniform bar between the ends
	ends    [2]pointID
	upright bool
	path    bool // the way of a hand, no part of the machine
	at      *node
}

type joint struct {
	name  string
	kind  mechanism.JointKind
	a, b  linkID
	point pointID   // nowhere: the slider's centre of mass, put on the line
	along direction // of a slide
	grip  grip
	at    *node
}

// grip is a joint's friction.
type grip struct{ coefficient, diameter, bearing, drag num }

type station struct {
	name    string
	link    linkID
	point   pointID
	outline outlineID
	pass    string      // word for the side
	side    planar.Side // that the word means in the measured pose
	tied    num         // direction from the axis, at an end on an outline
	tiedAt  pointID     // or the place
	turns   int
	loss    loss
}

type loss struct{ efficiency, slip, bearing, axle num }

var noLoss = loss{none, none, none, none}

type rope struct {
	name  string
	route []station
	at    *node
}

// outline is the shape of a sheave or cam about its axis.
type outline struct {
	name   string
	link   linkID
	axis   pointID
	start  num // turn from the way it was drawn
	shape  form
	loss   loss
	across across // of a sheave, for the bearing loss
	at     *node
	used   bool // a rope runs over it
}

type element struct {
	name  string
	kind  string
	route []station
	joint jointID
	law   func(values) mechanism.Law
	at    *node
}

type weight struct {
	name     string
	link     linkID
	point    pointID
	mass     num
	diameter num
	load     bool
	at       *node
}

type chain struct {
	name          string
	link          linkID
	point         pointID
	floor, length num
	density       num
	at            *node
}

type wheel struct {
	name                          string
	joint                         jointID
	inertia, mass, diameter, gear num
	at                            *node
}

type drive struct {
	joint    jointID
	from, to num
	at       *node
}

type contact struct {
	name  string
	kind  ContactKind
	link  linkID
	point pointID
	at    *node
}

type plane struct {
	tilt, offset num
	mirrored     bool
}
