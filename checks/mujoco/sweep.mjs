// Sweeps a machine: closes its loops and ropes on the engine's own position
// errors and Jacobians, then projects the engine's loads on the one motion
// left. The engine's equality constraints are soft, so its forward and inverse
// dynamics would not answer this exactly.
import { chooseTree, loopJoints, modelXML } from './model.mjs';
import { solve } from './linear.mjs';
import { Rope } from './ropes.mjs';

// closed is the loop error still taken as met, m: a few roundings near 1 m.
const closed = 4e-15;

// stride is the longest driver step between two closures, rad or m.
const stride = 0.05;

export class Sweep {
  constructor(mj, c) {
    Object.assign(this, { mj, c });
    const tree = chooseTree(c);
    this.loops = loopJoints(c, tree);
    mj.FS.writeFile('/case/model.xml', modelXML(c, tree, this.loops));
    this.model = mj.MjModel.loadFromXML('/case/model.xml');
    this.data = new mj.MjData(this.model);

    // The dofs of the machine itself, without those of the beads.
    const id = (kind, name) => mj.mj_name2id(this.model, mj.mjtObj[kind].value, name);
    this.dofs = tree.map((t) => id('mjOBJ_JOINT', `j${t.joint}`));
    this.mover = id('mjOBJ_JOINT', `j${c.driver}`);
    this.free = this.dofs.filter((i) => i !== this.mover);
    this.jacobian = new mj.DoubleBuffer(3 * this.model.nv);
    this.contact = c.contact ? id('mjOBJ_SITE', 'contact') : -1;
    this.bodies = c.links.map((_, i) => (i === 0 ? 0 : id('mjOBJ_BODY', `l${i}`)));

    this.engine();
    this.ropes = (c.ropes ?? []).map((r, i) => new Rope(mj, this.model, this.data, r, i));
    this.ropes.forEach((r) => r.settle());
    this.kept = this.ropes.filter((r) => r.rope.keep);
    this.kept.forEach((r) => { r.whole = r.length(); });
    if (this.free.length !== 2 * this.loops.length + this.kept.length) throw new Error('the machine has not one freedom');
  }

  engine() { this.mj.mj_fwdPosition(this.model, this.data); }

  // constraints returns error and Jacobian row of each loop (x and y) and of
  // each rope of fixed length. A connect has a third row across the plane.
  constraints() {
    const n = this.model.nv, { efc_pos: pos, efc_J: J } = this.data;
    const rows = this.loops.flatMap((_, i) => [3 * i, 3 * i + 1]).map((k) => ({ error: pos[k], row: J.slice(k * n, (k + 1) * n) }));
    return rows.concat(this.kept.map((r) => ({ error: r.length() - r.whole, row: r.gradient() })));
  }

  place(q) {
    const from = this.data.qpos[this.mover], steps = Math.max(1, Math.ceil(Math.abs(q - from) / stride));
    for (let i = 1; i <= steps; i++) {
      this.data.qpos[this.mover] = i === steps ? q : from + ((q - from) * i) / steps;
      this.close();
    }
  }

  close() {
    let last = Infinity;
    for (let i = 0; i < 50; i++) {
      this.engine();
      this.ropes.forEach((r) => r.settle());
      const rows = this.constraints();
      const worst = Math.max(0, ...rows.map((r) => Math.abs(r.error)));
      // Rounding may keep the error above the limit; then it stops falling.
      if (worst <= closed || (worst < 1e-13 && worst >= last)) return;
      last = worst;
      const step = solve(rows.map((r) => this.free.map((k) => r.row[k])), rows.map((r) => -r.error));
      this.free.forEach((k, j) => { this.data.qpos[k] += step[j]; });
    }
    throw new Error(`the loops do not close at ${this.data.qpos[this.mover]}: ${last} m left`);
  }

  // rates gives every dof its rate at unit driver rate.
  rates() {
    const rows = this.constraints();
    const rate = solve(rows.map((r) => this.free.map((k) => r.row[k])), rows.map((r) => -r.row[this.mover]));
    this.data.qvel.fill(0);
    this.data.qvel[this.mover] = 1;
    this.free.forEach((k, j) => { this.data.qvel[k] = rate[j]; });
    return rate;
  }

  position(q) {
    this.place(q);
    this.rates();
    this.mj.mj_forward(this.model, this.data);
    const { energy } = this.data, rates = this.data.qvel.slice(), speeds = this.speeds();
    const velocity = this.c.contact ? speeds.shift() : [0, 0];
    const moved = { velocity, loads: speeds, mass: 2 * energy[1] };
    const ropes = this.ropes.map((r) => {
      const g = r.gradient();
      return { length: r.length(), rate: this.dofs.reduce((s, k) => s + g[k] * rates[k], 0) };
    });

    this.data.qvel.fill(0);
    this.mj.mj_forward(this.model, this.data);
    return { at: q, poses: this.poses(), ...moved, ...this.statics(velocity, ropes) };
  }

  // speeds lists the velocities the model has sensors for: the contact's, if
  // there is one, then each weight's.
  speeds() {
    const v = this.data.sensordata;
    return Array.from({ length: v.length / 3 }, (_, i) => [v[3 * i], v[3 * i + 1]]);
  }

  // statics balances the loads in every dof of the machine by the loops, the
  // ropes and what holds it, once the driver joint and then, if there is one,
  // the contact: Jᵀλ + held = bias - passive.
  statics(v, ropes) {
    const rows = this.constraints(), { qfrc_bias: bias, qfrc_passive: passive } = this.data;
    const balance = (held) => solve(
      this.dofs.map((k) => [...rows.map((r) => r.row[k]), held(k)]),
      this.dofs.map((k) => bias[k] - passive[k]),
    );
    let x = balance((k) => (k === this.mover ? 1 : 0)), hold = [0, 0];
    const drive = x[rows.length];
    if (this.c.contact) {
      const moved = this.moved(v);
      x = balance((k) => moved[k]);
      hold = v.map((u) => u * x[rows.length]);
    }

    // The engine's row of a loop is the point on a less the point on b.
    const reactions = this.c.joints.map((_, i) => {
      const k = this.loops.indexOf(i);
      return k < 0 ? null : { force: [-x[2 * k], -x[2 * k + 1]], moment: 0 };
    });
    this.kept.forEach((r, i) => { ropes[r.index].tension = -x[2 * this.loops.length + i]; });
    return { drive, hold, reactions, ropes };
  }

  // moved returns, by dof, how far the contact moves along u.
  moved(u) {
    this.mj.mj_jacSite(this.model, this.data, this.jacobian, null, this.contact);
    const n = this.model.nv, J = this.jacobian.GetView();
    return this.dofs.reduce((m, k) => ({ ...m, [k]: u[0] * J[k] + u[1] * J[n + k] }), {});
  }

  poses() {
    const { xpos: p, xquat: r } = this.data;
    return this.bodies.map((i) => ({ turn: 2 * Math.atan2(r[4 * i + 3], r[4 * i]), shift: [p[3 * i], p[3 * i + 1]] }));
  }

  delete() {
    this.jacobian.delete();
    this.data.delete();
    this.model.delete();
  }
}
