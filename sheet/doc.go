// Package sheet reads and writes what people write down: YAML documents, with
// every error located.
//
// # One language, one pose
//
// A machine sheet says what a tape, a scale and an angle gauge show of a machine
// standing in one pose. A place is [forward, up], seen from the person's right
// side. A number is taken as its text and read by package quantity: any unit,
// and ± for how far off it may be; bare numbers are mm, kg, N, degrees. A number
// may also be a group {is: 14 ± 1 kg, how: hanging scale}.
//
//	steelyard: machine 1         kind and version, required
//	name, notes, measured        text
//	cautions: [text, …]
//
//	points: {name: [x, y]}
//	links:  {ground: [point, …], name: [point, …] or
//	         {points, mass, centre: point or [x, y], inertia, upright: yes}}
//
// A point that two links list is a pin. A link's centre, if not given, is
// half-way between the two of its points that lie furthest apart, and its
// inertia that of a uniform bar between them; its mass is 0.
//
//	pins:   {point: {friction, diameter, drag}}
//	slides: {link: {along: [point, point] or up, down, forward, back, angle,
//	         on: link, at: point, friction, bearing: length, drag}}
//
// Each slide is named after the link that slides; what it slides on carries the
// two points, or is the ground.
//
//	sheaves: {name: {at: point, on: link, diameter or radius, LOSS}}
//	cams:    {name: {axis: point, on: link, start: angle, LOSS, one of
//	          circle:  {diameter or radius, centre: [x, y]}
//	          ellipse: {length, width, lean: angle, centre: [x, y]}
//	          spiral:  {start radius, end radius, start at: angle, sweep: angle,
//	                    grows: evenly or in proportion, centre: [x, y]}
//	          traced:  [[x, y], …] with corners: [number, …]}}
//
// A cam is measured from its axis, forward and up in the measured pose; start
// turns it from there. LOSS is one of efficiency; slip, of a rope dragged over
// something fixed; or bearing with axle, the friction coefficient and diameter
// of a sheave's bearing.
//
//	ropes: {name: [station, station, …]}
//
// A rope is listed from end to end. A station is a point's name; or `over`,
// `under`, `behind` or `in front of` and the name of a sheave or cam, which tell
// the face of it that the rope touches in the measured pose. Where the rope runs
// past almost straight, `clockwise round` and `counter-clockwise round` tell the
// way round as seen from the person's right, going along the list. As a group a
// station takes more: {at: point, on: link, slip}; and, for an end that is fixed
// to a sheave or cam, {over: cam, tied: angle from its axis or point, turns: 1}.
//
//	loads: {name: {kind: …}}
//	  plates, free weight, counterweight   at, on, mass, diameter
//	  weight stack     at, mass, along, on, guide friction, guide length, guide drag
//	  chain            at, on, floor, length, mass per metre
//	  spring, extension spring   route, rate, free length, preload
//	  gas spring       route, force, force in, length, stroke
//	  band             route, and pulls: [[length, force], …] or
//	                   free length, width, thickness, strands, shear modulus
//	  steady force     route, force
//	  damper           route, damping
//	  torsion spring   about: pin, between: [link, link], rate, rests at, preload
//	  steady moment    about, between, moment
//	  flywheel         about, between, inertia or mass and diameter, gear
//
// A route is written as a rope's. A weight stack is itself a link, which slides
// up and down at its point. Plates and free weights are the load whose travel
// the lift ratio tells; so is a stack.
//
//	contact: {kind: grip, pad, foot plate, strap, rope handle or held,
//	          at: point, on: link, name, notes}
//
// A rope handle that nothing else guides moves on a stated path: `straight to:
// point`, `round: point`, or `through: [point, point]`, an arc. It is then a
// link called handle.
//
//	travel: {turn: link, about: point, against: link, from: angle, to: angle} or
//	        {slide: link, from: length, to: length}
//
// Both ends count from the measured pose. from is where lifting starts.
//
//	plane: {tilt: angle, offset: length, mirrored: yes}
//	settings: {name: {notes, default, values: [a, b] or {label: a} or
//	           {label: {path: a}}, or range: {from, to, step}; and
//	           sets: path or [path, …]
//	           moves: {points: [point, …], along: direction as of a slide}
//	           turns: {points: [point, …], about: point}}}
//
//	station: {serves: exercise or [exercise, …], posture, faces: forward or back,
//	          drawn: from the side or from in front,
//	          one of seat, bench, standing at, kneeling at, hips: point,
//	          back pad or trunk: angle, thighs: angle, works: both or one,
//	          width, height, forward: length, elbows out or knees out: angle,
//	          rests: yes, bend: angle, on: part, pad radius: length,
//	          foot: middle, heel or ball, plate: angle, feet: point,
//	          in line with: point}
//
// The station tells how a person meets the machine; a sheet need not have one.
// seat is where seat and back pad meet, or the seat under the hips where there
// is no back pad. Slopes of back and plate count from the floor: a back of 0° lies, of
// 90° is upright. width is from hand to hand at the measured pose.
//
// A path leads to a value by its keys: loads.plates.mass, points.grip.x. A
// setting's value, even the default, replaces what stands there.
//
// Where a point lies on several links, on: says which. Names have up to 40
// letters, digits, spaces, - and '.
//
// # From text to machine
//
// [Read] refuses what is too large, too deep or no text before the YAML parser
// sees it, and keeps every value's source text and place. [Document.Machine]
// resolves names and counts numbers, and tries every value of every setting.
// [Machine.Build] chooses settings; [Built.Rebuild] only does arithmetic, for
// the many machines of an error band. Every refusal is a [Problem]: place, what
// was read, limit, cure.
//
//	guard.go  tree.go  syntax.go             bytes to a tree of located texts
//	document.go  paths.go  set.go  grow.go   the document, changing one value of it, adding some
//	reader.go  fields.go  number.go          reading keys, names and numbers
//	settings.go  moves.go  steps.go          settings: what they change, what they can be
//	choose.go                                values put in their places
//	machine.go                               the sections of a machine
//	points.go  links.go  joints.go
//	outlines.go  forms.go  traced.go
//	ropes.go  sides.go
//	loads.go  springs.go  contact.go
//	station.go                               how a person meets it
//	person.go  person_strength.go            a person, and person_explain.go
//	plan.go  build.go  built.go              numbers to a machine
//	explain.go  explain_parts.go  gaps.go    telling what was understood
//	problem.go  locate.go  suggest.go        where it was not, and what to write
//	example.go                               a sheet of each kind to start from
//
// # A person
//
//	steelyard: person 1
//	name, notes                  text
//	height, mass                 required
//	sex: female, male or not stated; age: years
//	segments: the table of segment masses
//	lengths: {dimension: length}
//	limits: {motion: angle}      in the sense of the motion
//	strength: [{action: motion, angle, moment, how} or
//	           {action: motion, angle, force, at: distance from the joint, how} or
//	           {lift: machine, load, repetitions, settings: {name: value}, how}]
//	avoid: [text, …]
//
// The ± of a length or strength counts as two standard deviations.
package sheet
