// Ropes round several sheaves. The engine wraps a tendon round one round body
// between two sites, so a bead carries a site on each tangent between two
// sheaves. The bead is not put there by formula: it slides across the line of
// centres until the engine's own tendon length is stationary.

const sub = (p, q) => [p[0] - q[0], p[1] - q[1]];
const cross = (p, q) => p[0] * q[1] - p[1] * q[0];
const unit = (p) => { const l = Math.hypot(p[0], p[1]); return [p[0] / l, p[1] / l]; };
const right = (p) => [p[1], -p[0]];

// settled is the sine of the bend still left in a rope at a bead.
const settled = 1e-14;

export class Rope {
  constructor(mj, model, data, rope, index) {
    Object.assign(this, { mj, model, data, rope, index });
    const id = (kind, name) => mj.mj_name2id(model, mj.mjtObj[kind].value, `r${index}${name}`);
    this.tendon = mj.mj_name2id(model, mj.mjtObj.mjOBJ_TENDON.value, `r${index}`);
    this.ends = [0, 1].map((k) => id('mjOBJ_SITE', `end${k}`));
    this.axles = rope.over.map((_, k) => id('mjOBJ_SITE', `axle${k}`));
    this.sheaves = rope.over.map((_, k) => id('mjOBJ_GEOM', `sheave${k}`));
    this.markers = rope.over.map((_, k) => model.body_mocapid[id('mjOBJ_BODY', `side${k}`)]);
    this.beads = rope.over.map((_, k) => (k === 0 ? null : id('mjOBJ_JOINT', `bead${k}x`)));
    this.reach = rope.over.map(() => null); // of each bead from the line of centres, m
  }

  length() { return this.data.ten_length[this.tendon]; }
  gradient() { const n = this.model.nv; return this.data.ten_J.slice(this.tendon * n, (this.tendon + 1) * n); }

  sitePoint(id) { const x = this.data.site_xpos; return [x[3 * id], x[3 * id + 1]]; }

  // settle needs the engine's kinematics of the present pose; it leaves
  // tendon length and gradient that are exact for it.
  settle() {
    const centres = this.axles.map((id) => this.sitePoint(id));
    const lines = centres.map((c, k) => (k === 0 ? null : this.line(centres[k - 1], c, k)));
    lines.forEach((l, k) => { if (l) this.putBead(l, k, this.reach[k] ?? l.guess); });
    this.putMarkers(centres);
    this.engine();
    lines.forEach((l, k) => { if (l) this.relax(l, k); });
    this.checkSenses(centres);
  }

  engine() { this.mj.mj_fwdPosition(this.model, this.data); }

  // line is where bead k slides: through a point between the two sheaves,
  // across their line of centres.
  line(from, to, k) {
    const [p, q] = [this.rope.over[k - 1], this.rope.over[k]];
    const t = p.radius / (p.radius + q.radius), d = sub(to, from), across = right(unit(d));
    const side = (o) => (o.turn === 'ccw' ? o.radius : -o.radius);
    return { foot: [from[0] + t * d[0], from[1] + t * d[1]], across, guess: (1 - t) * side(p) + t * side(q) };
  }

  putBead(l, k, s) {
    this.reach[k] = s;
    this.data.qpos[this.beads[k]] = l.foot[0] + s * l.across[0];
    this.data.qpos[this.beads[k] + 1] = l.foot[1] + s * l.across[1];
  }

  // bend is the slope of tendon length as bead k slides.
  bend(l, k) {
    const g = this.gradient();
    return g[this.beads[k]] * l.across[0] + g[this.beads[k] + 1] * l.across[1];
  }

  relax(l, k) {
    let s0 = this.reach[k], b0 = this.bend(l, k), step = 1e-4;
    for (let i = 0; i < 50 && Math.abs(b0) > settled; i++) {
      const s1 = s0 + step;
      this.putBead(l, k, s1);
      this.engine();
      const b1 = this.bend(l, k);
      if (b1 === b0) break;
      step = -b1 * (s1 - s0) / (b1 - b0);
      [s0, b0] = [s1, b1];
      if (Math.abs(step) < 1e-16) break;
    }
    if (Math.abs(b0) > 1e-12) throw new Error(`rope ${this.index}: bead ${k} does not settle, bend ${b0}`);
  }

  // putMarkers puts a site beside each sheave, on the side where the rope lies:
  // going round counter-clockwise it has the axle on its left.
  putMarkers(centres) {
    const bead = (k) => [this.data.qpos[this.beads[k]], this.data.qpos[this.beads[k] + 1]];
    this.rope.over.forEach((o, k) => {
      const before = k === 0 ? this.sitePoint(this.ends[0]) : bead(k);
      const after = k === this.rope.over.length - 1 ? this.sitePoint(this.ends[1]) : bead(k + 1);
      const away = right(unit(sub(after, before))), reach = (o.turn === 'ccw' ? 2 : -2) * o.radius;
      this.data.mocap_pos[3 * this.markers[k]] = centres[k][0] + reach * away[0];
      this.data.mocap_pos[3 * this.markers[k] + 1] = centres[k][1] + reach * away[1];
    });
  }

  // checkSenses refuses a pose where the engine lifted the rope off a sheave or
  // led it round the other way.
  checkSenses(centres) {
    const { wrap_obj: obj, wrap_xpos: x, ten_wrapadr: start, ten_wrapnum: count } = this.data;
    const first = start[this.tendon], last = first + count[this.tendon];
    this.rope.over.forEach((o, k) => {
      let i = first;
      while (i < last && obj[i] !== this.sheaves[k]) i++;
      if (i === last) throw new Error(`rope ${this.index} lifts off sheave ${k}`);
      const touch = [x[3 * i], x[3 * i + 1]], before = [x[3 * i - 3], x[3 * i - 2]];
      const sense = cross(sub(touch, centres[k]), sub(touch, before)) > 0 ? 'ccw' : 'cw';
      if (sense !== o.turn) throw new Error(`rope ${this.index} goes ${sense} round sheave ${k}`);
    });
  }
}
