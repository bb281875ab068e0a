// Writes a neutral case (see ../case.go) as a MuJoCo model.
//
// Every body frame lies on the ground frame in the measured pose, so a body's
// frame at any later pose is that link's motion since it was measured.

// A bead is a light body that may slide freely in the plane; it carries the
// site that must stand between two sheaves of one rope. Its mass never enters
// a result.
const beadMass = 1e-6;

const xyz = (p) => `${p[0]} ${p[1]} 0`;

// chooseTree returns the joints that make a spanning tree, as
// {joint, parent, child}. The driver comes first so that its coordinate is one
// of the tree's, then the slides, because only a pin can close a loop.
export function chooseTree(c) {
  const rank = (i) => (i === c.driver ? 0 : c.joints[i].kind === 'slide' ? 1 : 2);
  const order = c.joints.map((_, i) => i).sort((p, q) => rank(p) - rank(q) || p - q);
  const group = c.links.map((_, i) => i);
  const kept = order.filter((i) => {
    const from = group[c.joints[i].a], into = group[c.joints[i].b];
    if (from === into) return false;
    group.forEach((g, k) => { if (g === from) group[k] = into; });
    return true;
  });

  const tree = [], placed = new Set([0]);
  for (let grew = true; grew;) {
    grew = false;
    for (const joint of kept) {
      const { a, b } = c.joints[joint];
      if (placed.has(a) === placed.has(b)) continue;
      const [parent, child] = placed.has(a) ? [a, b] : [b, a];
      tree.push({ joint, parent, child });
      placed.add(child);
      grew = true;
    }
  }
  if (placed.size !== c.links.length) throw new Error('a link hangs on nothing');
  return tree;
}

// loopJoints returns the joints outside the tree.
export function loopJoints(c, tree) {
  const loops = c.joints.map((_, i) => i).filter((i) => !tree.some((t) => t.joint === i));
  if (loops.some((i) => c.joints[i].kind === 'slide')) throw new Error('a slide closes a loop: not supported');
  return loops;
}

// jointXML: a coordinate is that of link b relative to link a, so the axis
// turns round where the tree runs from b to a.
function jointXML(c, { joint, parent }) {
  const j = c.joints[joint], sign = parent === j.a ? 1 : -1;
  if (j.kind === 'pin') return `<joint name="j${joint}" type="hinge" pos="${xyz(j.at)}" axis="0 0 ${sign}"/>`;
  return `<joint name="j${joint}" type="slide" axis="${xyz(j.axis.map((x) => sign * x))}"/>`;
}

// parts lists the sites and sheaves that ride on a link.
function partsXML(c, link) {
  const site = (name, at) => `<site name="${name}" pos="${xyz(at)}"/>`;
  let s = '';
  (c.ropes ?? []).forEach((r, i) => {
    r.ends.forEach((e, k) => { if (e.link === link) s += site(`r${i}end${k}`, e.at); });
    r.over.forEach((o, k) => {
      if (o.link !== link) return;
      if (!o.radius) throw new Error('only round sheaves: no shaped outlines');
      s += `<geom name="r${i}sheave${k}" type="cylinder" size="${o.radius} 0.01" pos="${xyz(o.at)}" mass="0" contype="0" conaffinity="0"/>`;
      s += site(`r${i}axle${k}`, o.at);
    });
  });
  (c.springs ?? []).forEach((p, i) => {
    if (p.a === link) s += site(`s${i}a`, p.atA);
    if (p.b === link) s += site(`s${i}b`, p.atB);
  });
  if (c.contact?.link === link) s += site('contact', c.contact.at);
  return s;
}

function bodyXML(c, tree, link) {
  const step = tree.find((t) => t.child === link), l = c.links[link];
  const weights = (c.weights ?? []).map((w, i) => (w.link !== link ? '' : weightXML(w, i)));
  const children = tree.filter((t) => t.parent === link).map((t) => bodyXML(c, tree, t.child));
  const I = l.inertia;
  return `<body name="l${link}"><inertial pos="${xyz(l.com)}" mass="${l.mass}" diaginertia="${I} ${I} ${I}"/>` +
    `${jointXML(c, step)}${partsXML(c, link)}${weights.join('')}${children.join('')}</body>`;
}

function weightXML(w, i) {
  const I = w.inertia ?? 0;
  return `<body pos="${xyz(w.at)}"><inertial pos="0 0 0" mass="${w.mass}" diaginertia="${I} ${I} ${I}"/><site name="w${i}"/></body>`;
}

// ropeXML: between two sheaves stands a bead; beside each sheave a marker that
// tells which way round the rope goes.
function ropeXML(r, i) {
  const route = r.over.map((_, k) =>
    `${k > 0 ? `<site site="r${i}bead${k}"/>` : ''}<geom geom="r${i}sheave${k}" sidesite="r${i}side${k}"/>`);
  return `<spatial name="r${i}"><site site="r${i}end0"/>${route.join('')}<site site="r${i}end1"/></spatial>`;
}

function helpersXML(r, i) {
  return r.over.map((_, k) =>
    `<body name="r${i}side${k}" mocap="true"><site name="r${i}side${k}"/></body>` +
    (k === 0 ? '' : `<body name="r${i}bead${k}"><inertial pos="0 0 0" mass="${beadMass}" diaginertia="${beadMass} ${beadMass} ${beadMass}"/>` +
      `<joint name="r${i}bead${k}x" type="slide" axis="1 0 0"/><joint name="r${i}bead${k}y" type="slide" axis="0 1 0"/>` +
      `<site name="r${i}bead${k}"/></body>`)).join('');
}

const springXML = (s, i) =>
  `<spatial name="s${i}" stiffness="${s.rate}" springlength="${s.free}"><site site="s${i}a"/><site site="s${i}b"/></spatial>`;

export function modelXML(c, tree, loops) {
  for (const key of ['elements', 'chains']) if (c[key]?.length) throw new Error(`${key}: not supported`);
  const ropes = c.ropes ?? [];
  if (ropes.some((r) => r.ends.some((e) => e.wound))) throw new Error('a rope wound up on an outline: not supported');
  const roots = tree.filter((t) => t.parent === 0).map((t) => bodyXML(c, tree, t.child));
  const connects = loops.map((i) =>
    `<connect body1="${body(c.joints[i].a)}" body2="${body(c.joints[i].b)}" anchor="${xyz(c.joints[i].at)}"/>`);
  return `<mujoco><compiler angle="radian"/>
<option gravity="0 ${-c.gravity} 0" jacobian="dense"><flag energy="enable"/></option>
<worldbody>${partsXML(c, 0)}${roots.join('')}${ropes.map(helpersXML).join('')}</worldbody>
<equality>${connects.join('')}</equality>
<tendon>${ropes.map(ropeXML).join('')}${(c.springs ?? []).map(springXML).join('')}</tendon>
<sensor>${[c.contact ? 'contact' : [], (c.weights ?? []).map((_, i) => `w${i}`)].flat(2).map(speedXML).join('')}</sensor></mujoco>`;
}

const speedXML = (site) => `<framelinvel objtype="site" objname="${site}"/>`;

const body = (link) => (link === 0 ? 'world' : `l${link}`);
