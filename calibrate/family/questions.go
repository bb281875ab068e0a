package family

import (
	"steelyard/planar"
	"steelyard/quantity"
)

// Questions that several families ask.
var (
	askHorn  = PointAsk{Name: "horn", Ask: "Where is the middle of the plates?", Hint: "On the horn, half-way through the stack of plates as you usually load it.", Picture: "horn"}
	askGrip  = PointAsk{Name: "grip", Ask: "Where does the body meet the machine?", Hint: "Middle of the hand, or of the pad.", Picture: "grip"}
	askFoot  = PointAsk{Name: "foot", Ask: "Where does the body meet the machine?", Hint: "Middle of the feet on the plate.", Picture: "foot plate"}
	askAxle  = PointAsk{Name: "axle", Ask: "Where does the arm turn?", Hint: "Middle of the axle's bolt or bearing.", Picture: "axle"}
	askEnd   = PointAsk{Name: "stack top", Ask: "Where is the rope fastened to the weight stack?", Hint: "The bolt on top of the stack.", Picture: "stack"}
	askWheel = PointAsk{Name: "sheave", Ask: "Where is the sheave the rope goes over?", Hint: "Its axle, above the stack.", Picture: "sheave"}

	askFirstAxle  = PointAsk{Name: "first axle", Ask: "Where does the arm you move turn?", Hint: "Its axle on the frame.", Picture: "axle"}
	askSecondAxle = PointAsk{Name: "second axle", Ask: "Where does the other arm turn?", Hint: "Its axle on the frame.", Picture: "axle"}
	askFirstPin   = PointAsk{Name: "first pin", Ask: "Where is the piece between the arms fastened to the first?", Hint: "Middle of the pin. Short distances between pins count most: tap with care.", Picture: "pin"}
	askSecondPin  = PointAsk{Name: "second pin", Ask: "Where is the piece between the arms fastened to the second?", Hint: "Middle of the pin.", Picture: "pin"}

	askSize  = ValueAsk{Name: "sheave", Ask: "How large is the sheave?", Hint: "Diameter at the bottom of the groove, and the rope's own thickness added.", Unit: quantity.Millimetre, Low: 20, High: 500, Step: 5, path: "sheaves.sheave.diameter"}
	askStack = ValueAsk{Name: "stack", Ask: "How much of the stack is lifted?", Hint: "The pin's number, the top plate counted. A hanging scale at the rope tells better.", Unit: quantity.Kilogram, Low: 0, High: 500, Step: 5, path: "loads.stack.mass", setting: "pin"}
)

// plates asks for the load.
func plates() ValueAsk {
	return ValueAsk{Name: "plates", Ask: "How much is on it?", Hint: "Plates on one side only if each arm turns by itself, else all of them.", Unit: quantity.Kilogram, Low: 0, High: 1000, Step: 2.5, path: "loads.plates.mass", setting: "plates"}
}

// weight asks what a part weighs.
func weight(link, ask string) ValueAsk {
	return ValueAsk{Name: link + " mass", Ask: ask, Hint: "Without plates. Hang it on a scale, or take the usual figure and leave its ± wide.", Unit: quantity.Kilogram, Low: 0, High: 300, Step: 0.5, path: "links." + link + ".mass"}
}

// turn asks how far something turns.
func turn(what string) ValueAsk {
	return ValueAsk{Name: "turn", Ask: "How far does " + what + " turn?", Hint: "From this stop to the end of the lift. A phone laid on it shows the slope at both ends.", Unit: quantity.Degree, Low: 1, High: 330, Step: 1, path: "travel.to", signed: true}
}

// questions returns the families without what is usual in them.
func questions() []Family {
	return []Family{lever(), fourBarArm(), fourBarCoupler(), fourBarRocker(), sled(), stack(), cam(), ropeHandle(), sixBar()}
}

func lever() Family {
	return Family{
		ID: "lever", Name: "Lever", About: "One arm turns about one axle and carries plates on a horn.",
		Points: []PointAsk{askAxle, askHorn, askGrip,
			{Name: "balance", Ask: "Where would the arm alone balance?", Hint: "Over a broom handle, or the middle of its heavy parts by eye. Skip it, and half-way between its ends is taken.", Picture: "balance", Optional: true,
				parts: []string{"  balance: [250 ± 50, 1080 ± 50]        # where the arm alone would balance\n", ", balance]", ", centre: balance"}}},
		Values: []ValueAsk{plates(), weight("arm", "What does the arm weigh?"), turn("the arm")},
	}
}

func fourBarArm() Family {
	first := askFirstAxle
	first.Ask = "Where does the arm with the plates turn?"
	return Family{
		ID: "four-bar-arm", Name: "Four-bar, plates on an arm", About: "Two arms on the frame carry a piece between them. The plates hang on one arm, the body holds the piece between.",
		Points: []PointAsk{first, askFirstPin, askSecondAxle, askSecondPin, askHorn, askGrip},
		Values: []ValueAsk{plates(), weight("first arm", "What does the arm with the plates weigh?"), weight("second arm", "What does the other arm weigh?"),
			weight("coupler", "What does the piece between the arms weigh?"), turn("the arm with the plates")},
	}
}

func fourBarCoupler() Family {
	return Family{
		ID: "four-bar-coupler", Name: "Four-bar, plates between the arms", About: "The body moves one arm; the plates hang on the piece between it and a second arm.",
		Points: []PointAsk{askFirstAxle, askFirstPin, askSecondAxle, askSecondPin, askHorn, askGrip},
		Values: []ValueAsk{plates(), weight("first arm", "What does the arm you move weigh?"), weight("second arm", "What does the other arm weigh?"),
			weight("coupler", "What does the piece between the arms weigh?"), turn("the arm you move")},
	}
}

func fourBarRocker() Family {
	second := askSecondAxle
	second.Ask = "Where does the arm with the plates turn?"
	return Family{
		ID: "four-bar-rocker", Name: "Four-bar, plates on the far arm", About: "The body moves one arm, a rod takes the motion to a second arm, and the plates hang on that.",
		Points: []PointAsk{askFirstAxle, askFirstPin, second, askSecondPin, askHorn, askFoot},
		Values: []ValueAsk{plates(), weight("first arm", "What does the arm you move weigh?"), weight("second arm", "What does the arm with the plates weigh?"),
			weight("rod", "What does the rod weigh?"), turn("the arm you move")},
	}
}

func sled() Family {
	return Family{
		ID: "sled", Name: "Sled", About: "A sled runs on straight rails and carries plates.",
		Points: []PointAsk{
			{Name: "rail foot", Ask: "Where is the lower end of the rail?", Hint: "Any place on the rail's middle line, as low as can be seen.", Picture: "rail"},
			{Name: "rail head", Ask: "Where is the upper end of the rail?", Hint: "On the same line, as high as can be seen: the further apart, the better the slope.", Picture: "rail"},
			{Name: "truck", Ask: "Where does the sled sit on the rail?", Hint: "Half-way between its front and rear rollers.", Picture: "rollers"},
			askFoot, askHorn},
		Values: []ValueAsk{plates(), weight("sled", "What does the empty sled weigh?"),
			{Name: "travel", Ask: "How far does the sled go?", Hint: "Along the rail, from this stop to the end of the lift.", Unit: quantity.Millimetre, Low: 10, High: 3000, Step: 10, path: "travel.to", signed: true}},
	}
}

func stack() Family {
	return Family{
		ID: "stack", Name: "Arm with a weight stack", About: "A rope goes from an eye on the arm over a sheave to a weight stack.",
		Points: []PointAsk{askAxle, askGrip,
			{Name: "eye", Ask: "Where is the rope fastened to the arm?", Hint: "The eye or bolt that holds it.", Picture: "eye"}, askWheel, askEnd},
		Values: []ValueAsk{askStack, weight("arm", "What does the arm weigh?"), askSize, turn("the arm")},
		bends:  []bend{{"sheave", "stack top", "sheave", "eye"}},
	}
}

func cam() Family {
	return Family{
		ID: "cam", Name: "Arm with a cam", About: "The rope lies on a cam that turns with the arm, and goes over a sheave to a weight stack.",
		Points: []PointAsk{askAxle, askGrip, askWheel, askEnd,
			{Name: "rope touches", Ask: "Where does the rope first touch the cam?", Hint: "Coming from the sheave. It tells on which side the rope lies.", Picture: "cam", Usual: planar.Vec{X: 0.05, Y: 0.985}, guide: true},
			{Name: "rope end", Ask: "Where is the rope fastened to the cam?", Hint: "Its bolt, or where it goes into the cam.", Picture: "cam"}},
		Values: []ValueAsk{askStack, weight("arm", "What do arm and cam weigh?"), askSize, turn("the arm")},
		Cam: &OutlineAsk{Name: "cam", Ask: "What is the cam's outline?", Hint: "Tap the groove's bottom all round, evenly spread, in order; closer where it bends most.",
			Picture: "cam outline", Least: 8, axis: "axle"},
		bends: []bend{{"sheave", "stack top", "sheave", "rope touches"}, {"cam", "sheave", "rope touches", "axle"}},
	}
}

func ropeHandle() Family {
	near, column := askSize, askSize
	near.Name, near.path, near.Ask = "near sheave", "sheaves.near.diameter", "How large is the sheave near the handle?"
	column.Name, column.path, column.Ask = "column sheave", "sheaves.column.diameter", "How large is the sheave above the stack?"
	return Family{
		ID: "rope-handle", Name: "Rope handle", About: "A handle on a rope that goes over two sheaves to a weight stack.",
		Points: []PointAsk{
			{Name: "handle", Ask: "Where is the hand at the start?", Hint: "With the rope just tight.", Picture: "handle"},
			{Name: "end", Ask: "Where is the hand at the end?", Hint: "Where the lift ends; the hand goes straight there.", Picture: "handle"},
			{Name: "near sheave", Ask: "Where is the sheave the handle's rope comes from?", Hint: "Its axle.", Picture: "sheave"},
			{Name: "column sheave", Ask: "Where is the sheave above the stack?", Hint: "Its axle.", Picture: "sheave"}, askEnd},
		Values: []ValueAsk{askStack, near, column},
		bends:  []bend{{"column", "stack top", "column sheave", "near sheave"}, {"near", "column sheave", "near sheave", "handle"}},
		span:   &span{"travel.to", "handle", "end"},
	}
}

func sixBar() Family {
	first, second, pin, far := askFirstAxle, askSecondAxle, askFirstPin, askSecondPin
	first.Ask, second.Ask = "Where does the arm with the plates turn?", "Where does the arm beside it turn?"
	pin.Ask, far.Ask = "Where does the arm with the plates meet the piece between?", "Where does the arm beside it meet the piece between?"
	return Family{
		ID: "six-bar", Name: "Six-bar", About: "The body lifts a lever; a rod goes from it to the piece between the two arms of a four-bar that carries the plates.",
		Points: []PointAsk{
			{Name: "lever axle", Ask: "Where does the lever you move turn?", Hint: "Its axle on the frame.", Picture: "axle"},
			{Name: "pad", Ask: "Where does the body meet the lever?", Hint: "Middle of the pad or of the hand.", Picture: "grip"},
			{Name: "lever eye", Ask: "Where is the rod fastened to the lever?", Hint: "Middle of the pin.", Picture: "pin"},
			{Name: "rod eye", Ask: "Where is the rod's other end?", Hint: "Middle of its pin on the piece between the arms.", Picture: "pin"},
			first, pin, second, far, askHorn},
		Values: []ValueAsk{plates(), weight("lever", "What does the lever weigh?"), weight("rod", "What does the rod weigh?"), weight("coupler", "What does the piece between the arms weigh?"),
			weight("first arm", "What does the arm with the plates weigh?"), weight("second arm", "What does the arm beside it weigh?"), turn("the lever")},
	}
}
