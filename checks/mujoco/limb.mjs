// Inverse dynamics of limbs with MuJoCo: reads a limb on standard input and
// writes its answers on standard output (both formats are in ../body.go).
//
// A limb has no loops and no soft constraints, so the engine's recursive
// Newton-Euler is exact here. Every body frame lies on the ground frame in the
// anatomical position.
import { readFileSync } from 'node:fs';
import load from 'mujoco-js';

const list = (v) => v.join(' ');
const sum = (a, b) => a.map((x, i) => x + b[i]);
const less = (a, b) => a.map((x, i) => x - b[i]);
const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

function bodyXML(segments, i) {
  if (i === segments.length) return '';
  const s = segments[i];
  const slides = i > 0 ? '' : ['1 0 0', '0 1 0', '0 0 1'].map((axis) => `<joint type="slide" axis="${axis}"/>`).join('');
  const hinges = s.axes.map((axis) => `<joint type="hinge" pos="${list(s.joint)}" axis="${list(axis)}"/>`);
  return `<body name="s${i}"><inertial pos="${list(s.com)}" mass="${s.mass}" diaginertia="${list(s.inertia)}"/>` +
    `${slides}${hinges.join('')}<site name="j${i}" pos="${list(s.joint)}"/>${bodyXML(segments, i + 1)}</body>`;
}

const modelXML = (l) => `<mujoco><compiler angle="radian"/><option gravity="0 ${-l.gravity} 0"/>
<worldbody>${bodyXML(l.segments, 0)}</worldbody></mujoco>`;

class Inverse {
  constructor(mj, l) {
    Object.assign(this, { mj, l });
    mj.FS.writeFile('/limb.xml', modelXML(l));
    this.model = mj.MjModel.loadFromXML('/limb.xml');
    this.data = new mj.MjData(this.model);
  }

  // The model's first body is ground, so segment i is body i+1.
  solve(m) {
    const { mj, model, data } = this;
    data.qpos.set([...m.root[0], ...m.angles]);
    data.qvel.set([...m.root[1], ...m.rates]);
    data.qacc.set([...m.root[2], ...m.accelerations]);
    data.xfrc_applied.fill(0);
    mj.mj_fwdPosition(model, data);
    const { segment, force } = m.load, k = segment + 1;
    const moment = sum(m.load.moment, cross(less(this.station(k, m.load.at), this.row(data.xipos, k)), force));
    data.xfrc_applied.set([...force, ...moment], 6 * k);
    mj.mj_inverse(model, data);
    mj.mj_rnePostConstraint(model, data);

    const motors = this.motors(k, m.load.moment, this.station(k, m.load.at), force);
    let next = 3;
    return this.l.segments.map((s, i) => {
      const hinges = motors.slice(next, next + s.axes.length);
      next += s.axes.length;
      return { ...this.answer(i), hinges };
    });
  }

  // motors takes the load's own part off the engine's generalized forces.
  motors(k, moment, at, force) {
    const { mj, model, data } = this, part = new mj.DoubleBuffer(model.nv);
    part.GetView().fill(0);
    mj.mj_applyFT(model, data, force, moment, at, k, part);
    const out = Array.from(data.qfrc_inverse, (q, i) => q - part.GetView()[i]);
    part.delete();
    return out;
  }

  row(a, k) { return Array.from(a.slice(3 * k, 3 * k + 3)); }

  // station returns the place of a point of a body given in its own frame.
  station(k, p) {
    const r = this.data.xmat.slice(9 * k, 9 * k + 9);
    return sum(this.row(this.data.xpos, k), [0, 3, 6].map((i) => r[i] * p[0] + r[i + 1] * p[1] + r[i + 2] * p[2]));
  }

  // answer reads one segment. The engine's forces and motions are spatial
  // vectors, rotation first, about the centre of mass of the whole limb.
  answer(i) {
    const { data } = this, k = i + 1, at = this.row(data.site_xpos, i);
    const spatial = (a) => [Array.from(a.slice(6 * k, 6 * k + 3)), Array.from(a.slice(6 * k + 3, 6 * k + 6))];
    const [moment, force] = spatial(data.cfrc_int);
    const about = this.row(data.subtree_com, 1);
    return {
      joint: at, com: this.row(data.xipos, k), omega: spatial(data.cvel)[0], alpha: spatial(data.cacc)[0],
      force, moment: sum(moment, cross(less(about, at), force)),
    };
  }
}

try {
  const l = JSON.parse(readFileSync(0, 'utf8'));
  const inverse = new Inverse(await load(), l);
  console.log(JSON.stringify(l.motions.map((m) => inverse.solve(m))));
} catch (e) {
  console.error(`mujoco: ${e.message ?? e}`);
  process.exit(1);
}
