// \0rolldown/runtime.js
var __commonJSMin = (cb, mod) => () => (mod || (cb((mod = { exports: {} }).exports, mod, mod.exports), cb = null), mod.exports);
// node_modules/preact/dist/preact.mjs
var n$1;
var t$2;
var r$2;
var u$3;
var i$2;
var f$3;
var o$3;
var e$2;
var l$2;
var c$2;
var a$3;
var h$3 = Symbol.for("pv");
var p$3 = {};
var y$3 = [];
var v$2 = /^m(i|n|o|s|text|space)$/;
var w$3 = Array.isArray;
var d$3 = y$3.slice;
var _$2 = Object.assign;
function g$3(n) {
	n && n.parentNode && n.remove();
}
function k$2(n, t, r) {
	var u, i, f, o = {}, e = arguments.length;
	for (f in t) "key" == f ? u = t[f] : "ref" == f && "function" != typeof n ? i = t[f] : o[f] = t[f];
	return e > 2 && (o.children = e > 3 ? d$3.call(arguments, 2) : r), m$3(n, o, u, i, null);
}
function m$3(r, u, i, f, o) {
	var e = {
		type: r,
		props: u,
		key: i,
		ref: f,
		__k: null,
		__: null,
		__b: 0,
		__e: null,
		__c: null,
		constructor: h$3,
		__v: o || ++t$2,
		__i: -1,
		__u: 0
	};
	return !o && n$1.vnode && n$1.vnode(e), e;
}
function $(n) {
	return n.children;
}
function x$1(n, t) {
	this.props = n, this.context = t, this.__g = 0;
}
function S$1(n, t) {
	if (null == t) return n.__ && S$1(n.__, n.__i + 1);
	for (var r; t < n.__k.length; t++) if ((r = n.__k[t]) && r.__e) return r.__e;
	return "function" != typeof n.type || n.props.__P ? null : S$1(n);
}
function C$1(t) {
	var r, u = t.__v, i = u.__e, f = [], o = [], e = t.__P;
	e && ((r = _$2({ constructor: h$3 }, u)).__v = u.__v + 1, n$1.vnode && n$1.vnode(r), z$1(e, r, u, t.__n, e.namespaceURI, 32 & u.__u ? [i] : null, f, i || S$1(u), 32 & u.__u, o), r.__v = u.__v, r.__.__k[r.__i] = r, E$1(f, r, o), u.__ = u.__e = null, r.__e != i && j$1(r));
}
function j$1(n) {
	if ((n = n.__) && n.__c && !n.props.__P) return n.__e = null, n.__k.some(function(t) {
		return t && (n.__e = t.__e);
	}), j$1(n);
}
function L(t) {
	(8 & t.__g || (t.__g |= 8, u$3.push(t), f$3++)) && i$2 == n$1.debounceRendering || ((i$2 = n$1.debounceRendering) || queueMicrotask)(H);
}
function H() {
	try {
		for (var n, t = 1; u$3.length;) u$3.length > t && u$3.sort(o$3), n = u$3.shift(), t = u$3.length, 8 & n.__g && C$1(n);
	} finally {
		(f$3 = u$3.length) && (i$2 || queueMicrotask)(H);
	}
}
function I(n, t, r, u, i, f, o, e, l, c, a) {
	var s, h, v, w, d, _, g = u.__k || y$3, k = t.length;
	for (l = q(r, t, g, l, k), s = 0; s < k; s++) null != (v = r.__k[s]) && (h = ~v.__i && g[v.__i] || p$3, v.__i = s, _ = z$1(n, v, h, i, f, o, e, l, c, a), w = v.__e, (h.ref != v.ref || 8 & h.__u) && (h.ref && G$1(h.ref, null, v, h), v.ref && a.push(v.ref, v.__c || w, v)), d = d || w, 4 & v.__u ? (l = A$2(v, l, n, !h.__v), h.__e && (h.__e = null)) : "function" == typeof v.type && void 0 !== _ ? l = _ : w && (l = w.nextSibling), v.__u &= -21);
	return r.__e = d, l;
}
function q(n, t, r, u, i) {
	var f, o, e, l, c, a, s, p, y, v = r.length, d = v, _ = 0, g = 0, k = n.__k = Array(i);
	for (f = 0; f < i; f++) null != (o = t[f]) && "boolean" != typeof o && "function" != typeof o ? ("object" != typeof o || o.constructor === String ? o = k[f] = m$3(null, o) : w$3(o) ? o = k[f] = m$3($, { children: o }) : o.constructor === h$3 && o.__b ? o = k[f] = m$3(o.type, o.props, o.key, o.ref, o.__v) : k[f] = o, l = f + _, o.__ = n, o.__b = n.__b + 1, e = null, ~(c = o.__i = P$1(o, r, l, d)) && (d--, (e = r[c]) && (e.__u |= 2)), e && e.__v ? (o.__u |= 16, c == l - 1 ? _-- : c == l + 1 ? _++ : c != l && (c > l ? _-- : _++, g = 1)) : (~c || (i > v ? _-- : i < v && _++), "function" != typeof o.type && (o.__u |= 4))) : k[f] = null;
	if (g) {
		for (a = [], s = [], f = 0; f < i; f++) if ((o = k[f]) && 16 & o.__u) {
			for (_ = 0, p = a.length; _ < p;) a[y = _ + p >> 1] < o.__i ? _ = y + 1 : p = y;
			a[_] = o.__i, s[f] = _ + 1;
		}
		for (_ = a.length; f--;) s[f] && (s[f] == _ ? _-- : k[f].__u |= 4);
	}
	if (d) for (f = 0; f < v; f++) !(e = r[f]) || 2 & e.__u || (e.__e == u && (u = S$1(e)), J(e, e));
	return u;
}
function A$2(n, t, r, u) {
	var i, f, o, e;
	if ("function" == typeof n.type) {
		if (n.props.__P) return t;
		if (i = n.__k) for (f = 0; f < i.length; f++) i[f] && (i[f].__ = n, t = A$2(i[f], t, r, !1));
		return t;
	}
	for (t && !t.parentNode && (t = S$1(n)) && !t.parentNode && (t = null), o = n.__e, e = t; e && 8 == e.nodeType;) e = e.nextSibling;
	for (o != e && (!u && r.moveBefore && o.parentNode ? r.moveBefore(o, t) : r.insertBefore(o, t || null)), t = o; (t = t && t.nextSibling) && 8 == t.nodeType && !t.data.startsWith("$s"););
	return t;
}
function P$1(n, t, r, u) {
	var i, f = n.key, o = n.type, e = t[r], l = e && !(2 & e.__u);
	if (null === e && null == f || l && f == e.key && o == e.type) return r;
	if (u > (l ? 1 : 0)) {
		for (i = r - 1; i >= 0; i--) if ((e = t[i]) && !(2 & e.__u) && f == e.key && o == e.type) return i;
		for (i = r + 1; i < t.length; i++) if ((e = t[i]) && !(2 & e.__u) && f == e.key && o == e.type) return i;
	}
	return -1;
}
function T$1(n, t, r) {
	r ??= "", "-" == t[0] ? n.setProperty(t, r) : n[t] = r;
}
function N(n, t, r, u, i) {
	var f, o;
	if ("style" == t) if ("string" == typeof r) n.style.cssText = r;
	else {
		if ("string" == typeof u && (n.style.cssText = u = ""), u) for (t in u) r && t in r || T$1(n.style, t);
		if (r) for (t in r) u && r[t] == u[t] || T$1(n.style, t, r[t]);
	}
	else if ("o" == t[0] && "n" == t[1]) "function" != typeof r && (r = null), "function" != typeof u && (u = null), (n.__e || (n.__e = {}))[t] = r, r && u || (o = a$3[t] || (a$3[t] = V(t)), (n.__a || (n.__a = {}))[t] = c$2, f = t != (t = t.replace(l$2, "$1")), (t = t.slice(2))[0] < "a" && (t = t.toLowerCase()), r ? n.addEventListener(t, o, f) : n.removeEventListener(t, o, f));
	else {
		if ("http://www.w3.org/2000/svg" == i) t = t.replace(/xlink(H|:h)/, "h").replace(/sName$/, "s");
		else if ("width" != t && "height" != t && "href" != t && "list" != t && "form" != t && "tabIndex" != t && "download" != t && "rowSpan" != t && "colSpan" != t && "role" != t && "popover" != t && t in n) try {
			n[t] = null == r ? "" : r;
			return;
		} catch (n) {}
		if ("function" == typeof r) return;
		null == r || !1 === r && "-" != t[4] ? n.removeAttribute(t) : n.setAttribute(t, "popover" == t && 1 == r ? "" : r);
	}
}
function V(t) {
	return function(r) {
		var u = this.__e;
		if (u) {
			if (u = u[t], null == r[e$2]) r[e$2] = c$2++;
			else if (r[e$2] < this.__a[t]) return;
			return u(n$1.event ? n$1.event(r) : r);
		}
	};
}
function z$1(t, r, u, i, f, o, e, l, c, a) {
	var s, p, v, d, k, b, m, M, C, j, L, H, q, A, O, P, T, N, V = r.type;
	if (r.constructor !== h$3) return null;
	128 & u.__u && (c = 32 & u.__u, s = u.__c.__z) && (r.__u |= c, p = o = [], 8 == s.nodeType ? l = B$1(s, o) : o.push(s), l = o[0] || l), (s = n$1.__b) && s(r);
	n: if ("function" == typeof V) {
		v = e.length;
		try {
			if (M = r.props, C = (s = V.prototype) && s.render, j = (s = V.contextType) && i[s.__c], L = s ? j ? j.props.value : s.__ : i, (d = u.__c) ? (r.__c = d, 2 & d.__g && (d.__g |= 1)) : (C ? r.__c = d = new V(M, L) : (r.__c = d = new x$1(M, L), d.constructor = V, d.render = K), j && j.sub(d), d.state || (d.state = {}), d.__n = i, d.__g |= 8, d.__h = [], d.__k = []), C && (d.__s || (d.__s = d.state), V.getDerivedStateFromProps && (d.__s == d.state && (d.__s = _$2({}, d.__s)), _$2(d.__s, V.getDerivedStateFromProps(M, d.__s)))), k = d.props, b = d.state, d.__v = r, u.__c) {
				if (M !== k && C && !V.getDerivedStateFromProps && d.componentWillReceiveProps && d.componentWillReceiveProps(M, L), r.__v == u.__v && !(8 & d.__g) || !(4 & d.__g) && d.shouldComponentUpdate && !1 === d.shouldComponentUpdate(M, d.__s, L)) {
					r.__v != u.__v && (d.props = M, d.state = d.__s, d.__g &= -9), r.__e = u.__e, r.__k = u.__k, r.__k.some(function(n) {
						n && (n.__ = r);
					}), y$3.push.apply(d.__h, d.__k), d.__k = [], d.__h.length && e.push(d), l = S$1(u);
					break n;
				}
				d.componentWillUpdate && d.componentWillUpdate(M, d.__s, L), C && d.componentDidUpdate && d.__h.push(function() {
					d.componentDidUpdate(k, b, m);
				});
			} else C && !V.getDerivedStateFromProps && d.componentWillMount && d.componentWillMount(), C && d.componentDidMount && d.__h.push(d.componentDidMount);
			d.context = L, d.props = M, d.__P = t, d.__g &= -5, H = n$1.__r, q = C ? 25 : 0;
			do
				d.__g &= -9, H && H(r), s = d.render(d.props, d.state = d.__s, d.context);
			while (8 & d.__g && ++q < 25);
			C && (y$3.push.apply(d.__h, d.__k), d.__k = []), d.state = d.__s, d.getChildContext && (i = _$2({}, i, d.getChildContext())), C && u.__c && d.getSnapshotBeforeUpdate && (m = d.getSnapshotBeforeUpdate(k, b)), A = s && s.type === $ && null == s.key ? s.props.children : s, M.__P && (s = l, f = (t = M.__P).namespaceURI, c = o = null, u.props && u.props.__P != t && (u.__k.some(function(n) {
				n && J(n, n);
			}), u.__k = null), l = u.__k ? S$1(u, 0) : null), l = I(t, w$3(A) ? A : [A], r, u, i, f, o, e, l, c, a), M.__P && (r.__e = null, l = s), r.__u &= -161, p && p.some(g$3), d.__h.length && e.push(d), 1 & d.__g && (d.__g &= -4);
		} catch (t) {
			if (e.length = v, r.__v = null, c || o) if (t && t.then) {
				if (r.__u |= 128 | c, o) {
					for (~(T = o.indexOf(l || void 0)) || (T = o.length); (N = o[T - 1]) && 8 == N.nodeType;) T--;
					for (; T < o.length; T++) if (N = o[T]) if (o[T] = null, O) {
						if (N == P) break;
					} else {
						if (8 != N.nodeType) break;
						N.data.startsWith("$s") && (P = B$1(O = N));
					}
				}
				if (!O) {
					for (; l && 8 == l.nodeType && l.nextSibling;) l = l.nextSibling;
					O = l;
				}
				(s = B$1(O = r.__c.__z || (r.__c.__z = O))) ? (r.__e = O, l = s) : r.__e = l, l = l && l.nextSibling;
			} else o && o.some(g$3);
			else r.__e = u.__e;
			r.__k || (r.__k = u.__k || []), t && t.then || D$1(r), n$1.__e(t, r, u);
		}
	} else l = r.__e = F$2(u.__e, r, u, i, f, o, e, c, a, t);
	return (s = n$1.diffed) && s(r), l;
}
function B$1(n, t) {
	if (n && 8 == n.nodeType && n.data.startsWith("$s")) for (var r = 1; n = n.nextSibling;) {
		if (8 == n.nodeType) {
			if (n.data.startsWith("$s")) r++;
			else if (n.data.startsWith("/$s") && !--r) return n;
		}
		t && t.push(n);
	}
}
function D$1(n) {
	n && (n.__c && (n.__c.__g |= 4), n.__k && n.__k.some(D$1));
}
function E$1(t, r, u) {
	for (var i = 0; i < u.length;) G$1(u[i++], u[i++], u[i++]);
	n$1.__c && n$1.__c(r, t), t.some(function(r) {
		try {
			t = r.__h, r.__h = [], t.some(function(n) {
				n.call(r);
			});
		} catch (t) {
			n$1.__e(t, r.__v);
		}
	});
}
function F$2(t, r, u, i, f, o, e, l, c, a) {
	var s, h, y, _, k, b, m, M, $ = u.props || p$3, x = r.props, C = r.type;
	if ("svg" == C ? f = "http://www.w3.org/2000/svg" : "math" == C ? f = "http://www.w3.org/1998/Math/MathML" : f || (f = "http://www.w3.org/1999/xhtml"), o) {
		for (s = 0; s < o.length; s++) if ((k = o[s]) && (C ? k.localName == C : 3 == k.nodeType)) {
			t = k, o[s] = null;
			break;
		}
	}
	if (!t) {
		if (M = a.ownerDocument || document, !C) return M.createTextNode(x);
		t = M.createElementNS(f, C, x.is ? x : a), l && (n$1.__m && n$1.__m(r, o), l = !1), o = null;
	}
	if (C) {
		if (a = "template" == C && t.content || t, o = "textarea" == C && null != x.defaultValue ? null : o && d$3.call(a.childNodes), !l && o) for ($ = {}, s = 0; s < t.attributes.length; s++) $[(k = t.attributes[s]).name] = k.value;
		for (s in $) k = $[s], "dangerouslySetInnerHTML" == s ? y = k : "children" == s || s in x || "value" == s && "defaultValue" in x || "checked" == s && "defaultChecked" in x || N(t, s, null, k, f);
		for (s in x) k = x[s], "children" == s ? _ = k : "dangerouslySetInnerHTML" == s ? h = k : "value" == s ? b = k : "checked" == s ? m = k : l && "function" != typeof k || $[s] === k || N(t, s, k, $[s], f);
		h ? (l || y && (h.__html == y.__html || h.__html == t.innerHTML) || (t.innerHTML = h.__html), r.__k = []) : (y && (t.textContent = ""), ("foreignObject" == C || "http://www.w3.org/1998/Math/MathML" == f && v$2.test(C)) && (f = "http://www.w3.org/1999/xhtml"), I(a, w$3(_) ? _ : [_], r, u, i, f, o, e, o ? o[0] : u.__k && S$1(u, 0), l, c), o && o.some(g$3)), l && "textarea" != C || (s = "value", "progress" == C && null == b ? t.removeAttribute(s) : null == b || b === t[s] && ("progress" != C || b) || N(t, s, b, $[s], f), s = "checked", null != m && m != t[s] && N(t, s, m, $[s], f));
	} else $ === x || l && t.data == x || (t.data = x);
	return t;
}
function G$1(t, r, u, i) {
	try {
		"function" == typeof t ? r ? r.__x = t(r) || 1 : i && (i = i.__c || i.__e) && (r = i.__x) && (i.__x = null, "function" == typeof r ? r() : t(null)) : t.current = r;
	} catch (t) {
		n$1.__e(t, u);
	}
}
function J(t, r, u) {
	var i, f, o, e;
	if (n$1.unmount && n$1.unmount(t), !(i = t.ref) || i.current && i.current != t.__e || G$1(i, null, r, t), i = t.__c) {
		if (i.componentWillUnmount) try {
			i.componentWillUnmount();
		} catch (t) {
			n$1.__e(t, r);
		}
		i.__P = i.__n = null;
	}
	if (i = t.__k) for (e = 0; e < i.length; e++) i[e] && J(i[e], r, "function" != typeof t.type || u && !t.props.__P);
	!u && (i = t.__c) && (i = i.__z) && (f = B$1(i, o = [])) && (i == t.__e && o.some(g$3), g$3(f), g$3(i)), u || g$3(t.__e), t.__e = t.__c = t.__ = null;
}
function K(n, t, r) {
	return this.constructor(n, r);
}
function Q(t, r) {
	var u, i, f, o;
	n$1.__ && n$1.__(t, r), 9 == r.nodeType && (r = r.documentElement), i = (u = t && 32 & t.__u) ? null : r.__k, r.__k = m$3($, { children: [t] }), f = [], o = [], z$1(r, r.__k, i || p$3, p$3, r.namespaceURI, i ? null : r.firstChild ? d$3.call(r.childNodes) : null, f, i ? i.__e : r.firstChild, u, o), E$1(f, r.__k, o), r.__k.props.children = null;
}
n$1 = { __e: function(n, t, r, u) {
	for (var i, o, e; t = t.__;) if ((i = t.__c) && !(1 & i.__g)) {
		i.__g |= 4;
		try {
			if ((e = (o = i.constructor) && o.getDerivedStateFromError) && i.setState(o.getDerivedStateFromError(n)), i.componentDidCatch && (i.componentDidCatch(n, u || {}), e = 1), e && 8 & i.__g) return void (i.__g |= 2);
		} catch (t) {
			n = t;
		}
	}
	throw f$3 = 0, n;
} }, t$2 = 0, r$2 = function(n) {
	return null != n && n.constructor === h$3;
}, x$1.prototype.setState = function(n, t) {
	var r = this.__s;
	r && r != this.state || (r = this.__s = _$2({}, this.state)), "function" == typeof n && (n = n(_$2({}, r), this.props)), n && (_$2(r, n), this.__v && (t && this.__k.push(t), L(this)));
}, x$1.prototype.forceUpdate = function(n) {
	this.__v && (this.__g |= 4, n && this.__h.push(n), L(this));
}, x$1.prototype.render = $, u$3 = [], f$3 = 0, o$3 = function(n, t) {
	return n.__v.__b - t.__v.__b;
}, e$2 = Symbol(), l$2 = /(PointerCapture)$|Capture$/i, c$2 = 0, a$3 = {};
// node_modules/preact/hooks/dist/hooks.mjs
var t$1;
var r$1;
var u$2;
var i$1;
var o$2 = Object.is;
var f$2 = 0;
var c$1 = [];
var e$1 = [];
var a$2 = n$1;
var v$1 = a$2.__b;
var l$1 = a$2.__r;
var m$2 = a$2.diffed;
var h$2 = a$2.__c;
var s$1 = a$2.unmount;
var p$2 = a$2.__;
function y$2(n, t) {
	a$2.__h && a$2.__h(r$1, n, f$2 || t), f$2 = 0;
	var u = r$1.__H || (r$1.__H = {
		__: [],
		__h: []
	});
	return n >= u.__.length && u.__.push({}), u.__[n];
}
function d$2(n) {
	return f$2 = 1, _$1(G, n);
}
function _$1(n, u, i) {
	var f = y$2(t$1++, 2);
	if (f.t = n, !f.__c && (f.__ = [i ? i(u) : G(void 0, u), function(n) {
		var t = (f.__N || f.__)[0], r = f.t(t, n);
		o$2(t, r) || (f.__N = [r, f.__[1]], f.__c.setState({}));
	}], f.__c = r$1, !r$1.__f)) {
		r$1.__f = !0;
		var c = r$1.shouldComponentUpdate;
		r$1.shouldComponentUpdate = function(n, t, r) {
			var u = this.__H;
			if (!u) return !0;
			var i = !1, f = this.props != n;
			if (u.__.some(function(n) {
				n.__N && (i = !0, o$2(n.__[0], n.__N[0]) || (f = !0));
			}), c) {
				var e = c.call(this, n, t, r);
				return i ? e || f : e;
			}
			return !i || f;
		};
	}
	return f.__;
}
function A$1(n, u) {
	var i = y$2(t$1++, 3);
	!a$2.__s && E(i.__H, u) && (i.__P = !0, i.__ = n, i.u = u, r$1.__H.__h.push(i));
}
function F$1(n, u) {
	var i = y$2(t$1++, 4);
	!a$2.__s && E(i.__H, u) && (i.__P = !1, i.__ = n, i.u = u, r$1.__h.push(i));
}
function T(n) {
	return f$2 = 5, w$2(function() {
		return { current: n };
	}, []);
}
function w$2(n, r) {
	var u = y$2(t$1++, 7);
	return E(u.__H, r) && (u.__ = n(), u.__H = r), u.__;
}
function P() {
	var n = y$2(t$1++, 11);
	if (!n.__) {
		for (var u = r$1.__v; !u.__m && u.__;) u = u.__;
		var i = u.__m || (u.__m = [0, 0]);
		n.__ = "P" + i[0] + "-" + i[1]++;
	}
	return n.__;
}
function g$2() {
	var n;
	do {
		for (; n = e$1.shift();) try {
			C(n);
		} catch (t) {
			a$2.__e(t, { __: (n = n.__P) && n.__v });
		}
		for (; n = c$1.shift();) {
			var t = n.__H;
			if (n.__P && t) try {
				t.__h.some(C), t.__h.some(D), t.__h = [];
			} catch (r) {
				t.__h = [], a$2.__e(r, n.__v);
			}
		}
	} while (e$1.length);
}
a$2.__b = function(n) {
	r$1 = null, v$1 && v$1(n);
}, a$2.__ = function(n, t) {
	n && t.__k && t.__k.__m && (n.__m = t.__k.__m), p$2 && p$2(n, t);
}, a$2.__r = function(n) {
	l$1 && l$1(n), t$1 = 0;
	var i = (r$1 = n.__c).__H;
	i && (u$2 == r$1 ? r$1.__h = [] : (i.__h.some(C), i.__h.some(D), t$1 = 0), i.__h = [], i.__.some(function(n) {
		n.__N && (n.__ = n.__N), n.u = n.__N = void 0;
	})), u$2 = r$1;
}, a$2.diffed = function(n) {
	m$2 && m$2(n);
	var t = n.__c;
	t && t.__H && (t.__H.__h.length && B(c$1.push(t)), t.__H.__.some(function(n) {
		n.u && (n.__H = n.u);
	})), u$2 = r$1 = null;
}, a$2.__c = function(n, t) {
	t.some(function(n) {
		try {
			n.__h.some(C), n.__h = n.__h.filter(function(n) {
				return !n.__ || D(n);
			});
		} catch (t) {
			n.__h = [function() {
				throw t;
			}];
		}
	}), h$2 && h$2(n, t);
}, a$2.unmount = function(n) {
	s$1 && s$1(n);
	var t, r, u = n.__c;
	u && u.__H && (u.__H.__.some(function(u) {
		try {
			if (u.__P && u.__c) {
				if (void 0 === r) {
					for (r = n.__; r && (!r.__c || !r.__c.__P);) r = r.__;
					r = r && r.__c;
				}
				u.__P = r, B(e$1.push(u));
			} else C(u);
		} catch (n) {
			t = n;
		}
	}), u.__H = void 0, t && a$2.__e(t, u.__v));
};
var k$1 = "function" == typeof requestAnimationFrame;
function z(n) {
	var t, r = function() {
		clearTimeout(u), k$1 && cancelAnimationFrame(t), setTimeout(n);
	}, u = setTimeout(r, 35);
	k$1 && (t = requestAnimationFrame(r));
}
function B(n) {
	1 != n && i$1 == a$2.requestAnimationFrame || ((i$1 = a$2.requestAnimationFrame) || z)(g$2);
}
function C(n) {
	var t = r$1, u = n.__c;
	"function" == typeof u && (n.__c = void 0, u()), r$1 = t;
}
function D(n) {
	var t = r$1;
	n.__c = n.__(), r$1 = t;
}
function E(n, t) {
	return !n || n.length != t.length || t.some(function(t, r) {
		return !o$2(t, n[r]);
	});
}
function G(n, t) {
	return "function" == typeof t ? t(n) : t;
}
// node_modules/@preact/signals-core/dist/signals-core.module.js
var i = Symbol.for("preact-signals");
function t() {
	if (!(v > 1)) {
		var i, t = !1;
		(function() {
			var i = c;
			c = void 0;
			while (void 0 !== i) {
				var t = i.S;
				if (t.v === i.v) {
					for (var r = t.t; void 0 !== r; r = r.x) if (r.i === i.i) r.i = t.i;
				}
				i = i.o;
			}
		})();
		while (void 0 !== h$1) {
			var r = h$1;
			h$1 = void 0;
			s++;
			while (void 0 !== r) {
				var n = r.u;
				r.u = void 0;
				r.f &= -3;
				if (!(8 & r.f) && w$1(r)) try {
					r.c();
				} catch (r) {
					if (!t) {
						i = r;
						t = !0;
					}
				}
				r = n;
			}
		}
		s = 0;
		v--;
		if (t) throw i;
	} else v--;
}
function r(i) {
	if (v > 0) return i();
	u$1 = ++e;
	v++;
	try {
		return i();
	} finally {
		t();
	}
}
var n;
var o$1 = void 0;
function f$1(i) {
	var t = o$1, r = n;
	o$1 = void 0;
	n = void 0;
	try {
		return i();
	} finally {
		o$1 = t;
		n = r;
	}
}
var h$1 = void 0;
var v = 0;
var s = 0;
var e = 0;
var u$1 = 0;
var c = void 0;
var a$1 = 0;
function d$1(i) {
	if (void 0 !== o$1) {
		var t = i.n;
		if (void 0 === t || t.t !== o$1) {
			t = {
				i: 0,
				S: i,
				p: o$1.s,
				n: void 0,
				t: o$1,
				e: void 0,
				x: void 0,
				r: t
			};
			if (void 0 !== o$1.s) o$1.s.n = t;
			o$1.s = t;
			i.n = t;
			if (32 & o$1.f) i.S(t);
			return t;
		} else if (-1 === t.i) {
			t.i = 0;
			if (void 0 !== t.n) {
				t.n.p = t.p;
				if (void 0 !== t.p) t.p.n = t.n;
				t.p = o$1.s;
				t.n = void 0;
				o$1.s.n = t;
				o$1.s = t;
			}
			return t;
		}
	}
}
function l(i, t) {
	this.v = i;
	this.i = 0;
	this.n = void 0;
	this.t = void 0;
	this.l = 0;
	this.W = null == t ? void 0 : t.watched;
	this.Z = null == t ? void 0 : t.unwatched;
	this.name = null == t ? void 0 : t.name;
}
l.prototype.brand = i;
l.prototype.h = function() {
	return !0;
};
l.prototype.S = function(i) {
	var t = this, r = this.t;
	if (r !== i && void 0 === i.e) {
		i.x = r;
		this.t = i;
		if (void 0 !== r) r.e = i;
		else f$1(function() {
			var i;
			null == (i = t.W) || i.call(t);
		});
	}
};
l.prototype.U = function(i) {
	var t = this;
	if (void 0 !== this.t) {
		var r = i.e, n = i.x;
		if (void 0 !== r) {
			r.x = n;
			i.e = void 0;
		}
		if (void 0 !== n) {
			n.e = r;
			i.x = void 0;
		}
		if (i === this.t) {
			this.t = n;
			if (void 0 === n) f$1(function() {
				var i;
				null == (i = t.Z) || i.call(t);
			});
		}
	}
};
l.prototype.subscribe = function(i) {
	var t = this;
	return x(function() {
		var r = t.value;
		f$1(function() {
			return i(r);
		});
	}, { name: "sub" });
};
l.prototype.valueOf = function() {
	return this.value;
};
l.prototype.toString = function() {
	return this.value + "";
};
l.prototype.toJSON = function() {
	return this.value;
};
l.prototype.peek = function() {
	var i = this;
	return f$1(function() {
		return i.value;
	});
};
Object.defineProperty(l.prototype, "value", {
	get: function() {
		var i = d$1(this);
		if (void 0 !== i) i.i = this.i;
		return this.v;
	},
	set: function(i) {
		if (i !== this.v) {
			if (s > 100) throw new Error("Cycle detected");
			(function(i) {
				if (0 !== v && 0 === s) {
					if (i.l !== u$1) {
						i.l = u$1;
						c = {
							S: i,
							v: i.v,
							i: i.i,
							o: c
						};
					}
				}
			})(this);
			this.v = i;
			this.i++;
			a$1++;
			v++;
			try {
				for (var r = this.t; void 0 !== r; r = r.x) r.t.N();
			} finally {
				t();
			}
		}
	}
});
function y$1(i, t) {
	return new l(i, t);
}
function w$1(i) {
	for (var t = i.s; void 0 !== t; t = t.n) if (t.S.i !== t.i || !t.S.h() || t.S.i !== t.i) return !0;
	return !1;
}
function b$1(i) {
	for (var t = i.s; void 0 !== t; t = t.n) {
		var r = t.S.n;
		if (void 0 !== r) t.r = r;
		t.S.n = t;
		t.i = -1;
		if (void 0 === t.n) {
			i.s = t;
			break;
		}
	}
}
function _(i) {
	var t = i.s, r = void 0;
	while (void 0 !== t) {
		var n = t.p;
		if (-1 === t.i) {
			t.S.U(t);
			if (void 0 !== n) n.n = t.n;
			if (void 0 !== t.n) t.n.p = n;
		} else r = t;
		t.S.n = t.r;
		if (void 0 !== t.r) t.r = void 0;
		t = n;
	}
	i.s = r;
}
function j(i, t) {
	l.call(this, void 0, t);
	this.x = i;
	this.s = void 0;
	this.g = a$1 - 1;
	this.f = 4;
}
j.prototype = new l();
j.prototype.h = function() {
	this.f &= -3;
	if (1 & this.f) return !1;
	if (32 == (36 & this.f)) return !0;
	this.f &= -5;
	if (this.g === a$1) return !0;
	this.g = a$1;
	this.f |= 1;
	if (this.i > 0 && !w$1(this)) {
		this.f &= -2;
		return !0;
	}
	var i = o$1;
	try {
		b$1(this);
		o$1 = this;
		var t = this.x();
		if (16 & this.f || this.v !== t || 0 === this.i) {
			this.v = t;
			this.f &= -17;
			this.i++;
		}
	} catch (i) {
		this.v = i;
		this.f |= 16;
		this.i++;
	}
	o$1 = i;
	_(this);
	this.f &= -2;
	return !0;
};
j.prototype.S = function(i) {
	if (void 0 === this.t) {
		this.f |= 36;
		for (var t = this.s; void 0 !== t; t = t.n) t.S.S(t);
	}
	l.prototype.S.call(this, i);
};
j.prototype.U = function(i) {
	if (void 0 !== this.t) {
		l.prototype.U.call(this, i);
		if (void 0 === this.t) {
			this.f &= -33;
			for (var t = this.s; void 0 !== t; t = t.n) t.S.U(t);
		}
	}
};
j.prototype.N = function() {
	if (!(2 & this.f)) {
		this.f |= 6;
		for (var i = this.t; void 0 !== i; i = i.x) i.t.N();
	}
};
Object.defineProperty(j.prototype, "value", { get: function() {
	if (1 & this.f) throw new Error("Cycle detected");
	var i = d$1(this);
	this.h();
	if (void 0 !== i) i.i = this.i;
	if (16 & this.f) throw this.v;
	return this.v;
} });
function O(i, t) {
	return new j(i, t);
}
function p$1(i) {
	var r = i.j;
	i.j = void 0;
	if ("function" == typeof r) {
		v++;
		var n = o$1;
		o$1 = void 0;
		try {
			r();
		} catch (t) {
			i.f &= -2;
			i.f |= 8;
			g$1(i);
			throw t;
		} finally {
			o$1 = n;
			t();
		}
	}
}
function g$1(i) {
	for (var t = i.s; void 0 !== t; t = t.n) t.S.U(t);
	i.x = void 0;
	i.s = void 0;
	p$1(i);
}
function S(i) {
	if (o$1 !== this) throw new Error("Out-of-order effect");
	_(this);
	o$1 = i;
	this.f &= -2;
	try {
		if (8 & this.f) g$1(this);
	} finally {
		t();
	}
}
function m$1(i, t) {
	this.x = i;
	this.j = void 0;
	this.s = void 0;
	this.u = void 0;
	this.f = 32;
	this.name = null == t ? void 0 : t.name;
	if (n) n.push(this);
}
m$1.prototype.c = function() {
	var i = this.S();
	try {
		if (8 & this.f) return;
		if (void 0 === this.x) return;
		var t = this.x();
		if ("function" == typeof t) this.j = t;
	} finally {
		i();
	}
};
m$1.prototype.S = function() {
	if (1 & this.f) throw new Error("Cycle detected");
	this.f |= 1;
	this.f &= -9;
	p$1(this);
	b$1(this);
	v++;
	var i = o$1;
	o$1 = this;
	return S.bind(this, i);
};
m$1.prototype.N = function() {
	if (!(2 & this.f)) {
		this.f |= 2;
		this.u = h$1;
		h$1 = this;
	}
};
m$1.prototype.d = function() {
	this.f |= 8;
	if (!(1 & this.f)) g$1(this);
};
m$1.prototype.dispose = function() {
	this.d();
};
function x(i, t) {
	var r = new m$1(i, t);
	try {
		r.c();
	} catch (i) {
		r.d();
		throw i;
	}
	var n = r.d.bind(r);
	n[Symbol.dispose] = n;
	return n;
}
// node_modules/@preact/signals/dist/signals.module.js
var h;
var p;
var m = "undefined" != typeof window && !!window.__PREACT_SIGNALS_DEVTOOLS__;
var g = [];
x(function() {
	h = this.N;
})();
function b(i, n) {
	n$1[i] = n.bind(null, n$1[i] || function() {});
}
function y(i) {
	if (p) {
		var n = p;
		p = void 0;
		n();
	}
	p = i && i.S();
}
function w(i) {
	var n = this, r = i.data, t = useSignal(r);
	t.name = "ReactiveDom";
	t.value = r;
	var e = w$2(function() {
		var i = n, r = n.__v;
		while (r = r.__) if (r.__c) {
			r.__c.__$f |= 4;
			break;
		}
		var o = O(function() {
			var i = t.value.value;
			return 0 === i ? 0 : !0 === i ? "" : i || "";
		}), e = O(function() {
			return !Array.isArray(o.value) && !r$2(o.value);
		}), u = x(function() {
			this.N = M;
			if (e.value) {
				var n = o.value;
				if (i.__v && i.__v.__e && 3 === i.__v.__e.nodeType) i.__v.__e.data = n;
			}
		}), c = n.__$u.d;
		n.__$u.d = function() {
			u();
			c.call(this);
		};
		return [e, o];
	}, []), u = e[0], c = e[1];
	return u.value ? c.peek() : c.value;
}
w.displayName = "ReactiveTextNode";
Object.defineProperties(l.prototype, {
	constructor: {
		configurable: !0,
		value: k$2($, null).constructor
	},
	type: {
		configurable: !0,
		value: w
	},
	props: {
		configurable: !0,
		get: function() {
			var i = this;
			return { data: { get value() {
				return i.value;
			} } };
		}
	},
	__b: {
		configurable: !0,
		value: 1
	}
});
b("__b", function(i, n) {
	y();
	if ("string" == typeof n.type) {
		var r, t = n.props;
		for (var f in t) if ("children" !== f) {
			var o = t[f];
			if (o instanceof l) {
				if (!r) n.__np = r = {};
				r[f] = o;
				t[f] = o.peek();
			}
		}
	}
	i(n);
});
b("__r", function(i, r) {
	i(r);
	if (r.type !== $) {
		y();
		var t, f = r.__c;
		if (f) {
			f.__$f &= -2;
			if (void 0 === (t = f.__$u)) f.__$u = t = function(i, n) {
				var r;
				x(function() {
					r = this;
				}, { name: n });
				r.c = i;
				return r;
			}(function(i) {
				return function() {
					var n;
					if (m) null == (n = this.y) || n.call(this);
					i.__$f |= 1;
					i.setState({});
				};
			}(f), "function" == typeof r.type ? r.type.displayName || r.type.name : "");
		}
		y(t);
	}
});
b("__e", function(i, n, r, t) {
	y();
	i(n, r, t);
});
b("diffed", function(i, n) {
	y();
	var r;
	if ("string" == typeof n.type && (r = n.__e)) {
		var t = n.__np, f = n.props, o = r.U;
		if (o) for (var e in o) {
			var u = o[e];
			if (!(void 0 === u || t && e in t)) {
				u.d();
				o[e] = void 0;
			}
		}
		if (t) {
			if (!o) {
				o = {};
				r.U = o;
			}
			for (var a in t) {
				var c = o[a], v = t[a];
				if (void 0 === c) {
					c = k(r, a, v, f);
					o[a] = c;
				} else c.o(v, f);
			}
		}
	}
	i(n);
});
function k(i, n, r, t) {
	var f = n in i && void 0 === i.ownerSVGElement, o = y$1(r);
	return {
		o: function(i, n) {
			o.value = i;
			t = n;
		},
		d: x(function() {
			this.N = M;
			var r = o.value.value;
			if (t[n] !== r) {
				t[n] = r;
				if (f) i[n] = r;
				else if (null != r && (!1 !== r || "-" === n[4])) i.setAttribute(n, r);
				else i.removeAttribute(n);
			}
		})
	};
}
b("unmount", function(i, n) {
	if ("string" == typeof n.type) {
		var r = n.__e;
		if (r) {
			var t = r.U;
			if (t) {
				r.U = void 0;
				for (var f in t) {
					var o = t[f];
					if (o) o.d();
				}
			}
		}
		var e = n.__np;
		if (e) {
			var u = n.props;
			for (var a in e) u[a] = e[a];
		}
		n.__np = void 0;
	} else {
		var c = n.__c;
		if (c) {
			c.__$f |= 8;
			var v = c.__$u;
			if (v) {
				c.__$u = void 0;
				v.d();
			}
		}
	}
	i(n);
});
b("__h", function(i, n, r, t) {
	if (t < 3) n.__$f |= 2;
	i(n, r, t);
});
x$1.prototype.shouldComponentUpdate = function(i, n) {
	if (this.__R) return !0;
	var r = this.__$u, t = r && void 0 !== r.s;
	for (var f in n) return !0;
	if (this.__f || "boolean" == typeof this.u && !0 === this.u) {
		var o = 2 & this.__$f;
		if (!(t || o || 4 & this.__$f)) return !0;
		if (1 & this.__$f) return !0;
	} else {
		if (!(t || 4 & this.__$f)) return !0;
		if (3 & this.__$f) return !0;
	}
	for (var e in i) if ("__source" !== e && i[e] !== this.props[e]) return !0;
	for (var u in this.props) if (!(u in i)) return !0;
	return !1;
};
function useSignal(i, n) {
	return w$2(function() {
		return y$1(i, n);
	}, []);
}
var A = function(i) {
	queueMicrotask(function() {
		queueMicrotask(i);
	});
};
function F() {
	r(function() {
		var i;
		while (i = g.shift()) h.call(i);
	});
}
function M() {
	if (1 === g.push(this)) (n$1.requestAnimationFrame || A)(F);
}
// src/state/route.ts
/** The place in the page, told by the address after #. */
/** read returns the place an address names; the room for one that names none. */
function read(hash) {
	const [screen, ...rest] = hash.replace(/^#\/?/, "").split("/").map(decoded);
	switch (screen) {
		case "machine":
		case "explain": return rest[0] ? {
			screen,
			id: rest[0]
		} : { screen: "room" };
		case "build": return {
			screen,
			family: rest[0] ?? ""
		};
		case "compare": return {
			screen,
			ids: rest.filter(Boolean).slice(0, 6)
		};
		case "people": return { screen };
	}
	return { screen: "room" };
}
function decoded(part) {
	try {
		return decodeURIComponent(part);
	} catch {
		return part;
	}
}
/** write returns the address of a place. */
function write(r) {
	const parts = [r.screen];
	if ("id" in r) parts.push(r.id);
	if ("family" in r && r.family) parts.push(r.family);
	if ("ids" in r) parts.push(...r.ids);
	return `#/${parts.map(encodeURIComponent).join("/")}`;
}
var route = y$1(read(location.hash));
addEventListener("hashchange", () => {
	route.value = read(location.hash);
});
/** go leads to a place. */
function go(r) {
	location.hash = write(r);
}
/** correct replaces the address without a step to go back to. */
function correct(r) {
	history.replaceState(null, "", write(r));
	route.value = r;
}
// src/words.ts
/**
* Every English string of the page. Another language is another object of the
* same shape. What machines do is put into words by the server.
*/
var words = {
	app: "Steelyard",
	skip: "Skip to the content",
	places: {
		label: "Places",
		room: "Room",
		compare: "Compare",
		people: "People",
		build: "Build"
	},
	thirds: [
		"lengthened",
		"middle",
		"shortened"
	],
	phases: {
		lifting: "lifting",
		lowering: "lowering",
		holding: "holding, no friction"
	},
	close: "Close",
	cancel: "Cancel",
	loading: "One moment …",
	taste: {
		label: "How the page looks",
		theme: "Light or dark",
		themes: {
			auto: "As the device",
			light: "Light",
			dark: "Dark"
		},
		units: "Units",
		metric: "Metric",
		imperial: "Imperial"
	},
	trouble: {
		title: "That did not work",
		unreachable: "The program does not answer. See whether it is still running, start it again if not, and try once more; nothing stored is lost.",
		status: (status) => `The program answered with error ${status}. Try again; if it stays, start the program anew.`,
		refused: "This page was opened without its key. Open the address the program printed when it started.",
		gone: "This machine is not in the room any more. Go back to the room; removed ones can be brought back there.",
		retry: "Try again"
	},
	room: {
		title: "The room",
		lead: "Each machine by its sign: the load, drawn along the path of the hand or foot. Thick is heavy; the ring is the start.",
		sort: "Sort by, or by where it loads",
		sorts: {
			name: "Name",
			force: "Heaviest",
			start: "Start",
			middle: "Middle",
			end: "End"
		},
		find: "Find",
		findHint: "name, muscle, lift",
		muscle: "Muscle",
		anyMuscle: "any",
		sortFit: "Fit",
		count: (n) => n === 1 ? "1 machine" : `${n} machines`,
		none: "No machine fits these words.",
		add: "Add a machine",
		compare: (n) => `Compare ${n}`,
		pick: (name) => `Pick ${name} to compare`,
		full: "Six are enough to compare; take one away first.",
		loads: (where) => `loads ${where}`,
		upTo: (force) => `up to ${force}`,
		untested: "cannot be computed",
		emptyTitle: "The room is empty",
		empty: "Put your first machine in: photograph it from the side and tap where it turns, or start from a family and type what the tape says. Or bring in the demo room, an invented boathouse gym, to see what a finished one looks like.",
		demoIn: "Bring in the demo room",
		demoOut: "Take the demo room away",
		removed: "Removed",
		recover: "Bring back",
		export: "Save everything as one file",
		import: "Read a saved file",
		folder: "Everything is kept on this machine, in",
		more: "More"
	},
	figure: {
		axis: "axis",
		contact: "contact"
	},
	chart: {
		travel: (unit) => `travel (${unit})`,
		gap: "no force here",
		label: (name) => `Force along the travel of ${name}`,
		before: "before",
		band: "may lie here",
		holdBand: "holding may lie here",
		table: "Read the curve as a table",
		columns: {
			travel: "Travel",
			lift: "Lift",
			hold: "Hold",
			lower: "Lower",
			range: "Range of lift",
			ratio: "Lift ratio"
		}
	},
	machine: {
		back: "Room",
		undo: "Undo",
		redo: "Redo",
		saving: "Saving …",
		explain: "Explain",
		explainStroke: "Explain this stroke to a client",
		compare: "Compare",
		remove: "Remove from the room",
		removeSure: (name) => `Remove ${name} from the room? It can be brought back there.`,
		more: "More about this machine",
		settingsGone: "Settings chosen earlier are no longer on this machine; everything stands as it usually does.",
		changedElsewhere: "Another page has changed this machine; this one now shows it too.",
		modes: {
			label: "What a finger does",
			work: "Work it",
			alter: "Alter it"
		},
		modeHints: {
			work: "Drag along the path to move the machine; two fingers to come nearer.",
			alter: "Drag any point to see what it changes. Lift the finger to keep it; Undo brings it back."
		},
		fit: "Show all",
		show: "Show",
		layers: {
			arms: "Moment arms",
			gravity: "Lines of gravity",
			rope: "Rope arms",
			forces: "Push of the body",
			names: "Names",
			band: "Uncertainty",
			friction: "Friction",
			ghost: "Ends of the travel"
		},
		scrub: "Place in the travel",
		play: "Play",
		pause: "Pause",
		tempo: "Tempo",
		tempoParts: {
			up: "up",
			top: "pause",
			down: "down",
			bottom: "pause"
		},
		tabs: {
			label: "About this machine",
			curve: "Curve",
			set: "Set",
			measure: "Measure",
			why: "Why",
			sheet: "Sheet"
		},
		here: (force, share) => `${force} at ${share} of the travel`,
		gapHere: "No force here",
		heldMass: (mass) => `as if holding ${mass}`,
		handle: (name, forward, up) => `${name}: ${forward} forward, ${up} up. Arrows move it 1 mm, with Shift 10 mm; Enter keeps, Escape restores.`,
		movable: "movable point",
		cannot: "It cannot go there:",
		problems: (n) => n === 1 ? "One thing in the sheet needs mending" : `${n} things in the sheet need mending`,
		line: (line) => `Line ${line}`,
		conflictTitle: "Two changes to one machine",
		conflict: "While you changed this machine, another page changed the same thing and stored it first. Nothing is lost: choose which of the two stays. The other can be found again with Undo.",
		mine: "Keep mine",
		theirs: "Keep the other",
		differs: "Where they differ"
	},
	person: {
		label: "On it",
		nobody: "Nobody",
		tab: "Person",
		can: (name) => `what ${name} can produce`,
		canLabel: "what the person can produce",
		sticking: "sticking point",
		off: (why) => `Nobody is drawn: ${why}`,
		effort: "Effort",
		effortAxis: "of what the person can produce (%)",
		effortLabel: (name) => `Effort of ${name} along the travel`,
		hardest: "hardest joint",
		muscles: "Muscles in their own thirds",
		musclesHint: "How hard each works while it is long, in between, and short.",
		muscle: "Muscle",
		never: "not there",
		helps: "Settings that would help",
		set: (setting, value) => `Set ${setting} to ${value}`,
		maximum: "Predicted maximum",
		maximumText: (load, low, high) => `${load} (${low} to ${high})`,
		warnings: "About the person's own figures",
		weak: "from sources not followed far enough back to lean on",
		fit: (effort, joint) => `${effort} of what the person can, ${joint}`,
		reach: (share) => `${share} of the travel within reach and range`
	},
	set: {
		none: "This machine has nothing to set.",
		lead: "Try the settings; the curve follows. Nothing of this changes the sheet.",
		less: (name) => `${name}: less`,
		more: (name) => `${name}: more`,
		reset: "Back to how it usually stands"
	},
	measure: {
		lead: "Every number of the sheet. Type 812 ± 3 mm, 45 lb or 17 1/2 in; the curve follows as you type and Enter keeps it.",
		less: (name) => `${name}: one step less`,
		more: (name) => `${name}: one step more`,
		find: "Find a number",
		narrow: (name, now, then) => `Measure ${name} again first: known exactly, the band would shrink from ±${now} to ±${then}.`,
		set: (setting) => `set by ${setting}`,
		groups: {
			points: "Points",
			links: "Links",
			pins: "Pins and slides",
			loads: "Loads",
			ropes: "Ropes and sheaves",
			travel: "Travel",
			plane: "Plane",
			settings: "Settings",
			contact: "Contact"
		},
		other: "Other",
		none: "This sheet holds no number that can be changed here. See it under Sheet."
	},
	scale: {
		title: "Read off a scale",
		lead: "Move the machine to a place of its travel, hold it there with a hanging scale along the path, and write the scale's force down. The curve shows it as a cross.",
		force: (place) => `Force at ${place}`,
		add: "Add",
		away: "Take away",
		remove: (place) => `Take away the reading at ${place}`,
		read: (place, force) => `${place}: ${force}, at other settings`,
		compared: (place, read, model, off) => `${place}: ${read} read, ${model} by the sheet (${off})`,
		legend: "read off a scale"
	},
	why: {
		here: "Here",
		shares: "What asks for the force here",
		readings: "Read from the curve",
		thorough: "Work out the band thoroughly",
		thoroughHint: "2,000 machines within the ± of every measurement; takes some seconds.",
		progress: (done, total) => `${done} of ${total}`,
		sampled: (low, high) => `Sampled: the peak lies between ${low} and ${high}, 19 times in 20.`,
		failed: (n, draws) => `${n} of ${draws} of those machines could not move.`,
		understood: "Understood from the sheet",
		assumed: "Assumed",
		missing: "Not told",
		care: "Take care",
		names: {
			peak: "Hardest",
			least: "Lightest",
			start: "Start",
			end: "End",
			mean: "On average",
			flatness: "Evenness",
			peakToStart: "Hardest over start",
			ratio: "Lift ratio",
			work: "Work of one lift",
			lost: "Lost to friction in one repetition",
			travel: "Travel"
		},
		at: (share) => `at ${share}`
	},
	sheet: {
		label: "The sheet as text",
		lead: "The machine as it is stored. Whatever can be dragged or typed elsewhere is written here.",
		try: "Try it",
		keep: "Keep it",
		restore: "As stored",
		same: "Nothing changed",
		changed: "Changed, not kept yet"
	},
	explain: {
		title: (name) => `${name}, explained`,
		previous: "Back",
		next: "Next",
		step: (n, of) => `${n} of ${of}`,
		steps: "Steps",
		take: "Take it along",
		formats: {
			html: "Page for a client",
			gif: "Moving picture (GIF)",
			webm: "Film (WebM)",
			png: "Picture (PNG)",
			svg: "Drawing (SVG)",
			pdf: "Report (PDF)",
			report: "Report (HTML)"
		},
		htmlHint: "One file, works without a network, the stroke can be moved with a finger.",
		message: "Text to send",
		copy: "Copy",
		copied: "Copied",
		copyByHand: "Marked: copy it with the device's own copy command.",
		film: (percent) => `Drawing the stroke: ${percent}`,
		noFilm: "This browser cannot make films; take the moving picture instead.",
		made: "Made with Steelyard. A model, not a measurement of safety."
	},
	compare: {
		title: "Compare",
		lead: "Up to six machines or settings on one axis. The first is what the others are compared with.",
		empty: "Nothing to compare yet. Choose two or more machines below; one machine at two settings works too.",
		add: "Add",
		choose: "Machine",
		remove: (label) => `Take ${label} away`,
		over: "Over",
		share: "own travel",
		travel: "distance",
		phase: "While",
		measure: "Show",
		force: "Force",
		effort: "Effort",
		moment: (joint) => `Moment at the ${joint}`,
		normal: "As a share of its own peak",
		axisShare: "share of the travel (%)",
		axisNormal: "share of its peak (%)",
		first: "compared with",
		words: "In words",
		settings: (label) => `Settings of ${label}`
	},
	people: {
		title: "People",
		lead: "Who trains here. Height and mass are enough to begin with; everything else narrows the answer. It stays on this machine.",
		empty: "Nobody yet. Add a person from the example sheet and write their own height and mass in.",
		add: "Add a person",
		keep: "Keep",
		edit: "The person's sheet",
		warnings: "Please look again",
		missing: "What would make it closer",
		removed: "Remove"
	},
	build: {
		title: "A new machine",
		lead: "What is it most like?",
		name: "Its name",
		usual: "New machine",
		how: "How do you want to measure it?",
		photo: "From a photo",
		tape: "With the tape",
		empty: "From an empty sheet",
		photoHint: "Side on, the whole machine in the picture, a plate or a tape in it for the scale. Stand far off and zoom in.",
		choosePhoto: "Take or choose a photo",
		another: "Another photo",
		reading: "Reading the photo …",
		notPhoto: "This file is not a photo a browser can read. Choose a JPEG or PNG; a phone makes one when it is sent as a picture.",
		steps: {
			scale: "Scale",
			plumb: "Plumb line",
			points: "Points",
			cam: "Cam",
			values: "Numbers",
			done: "Look"
		},
		scaleLead: "What in the photo has a known size, in the plane in which the machine moves?",
		scales: {
			plate: "A round plate",
			line: "A length",
			rectangle: "A rectangle"
		},
		plateHint: "Tap five places or more around its rim.",
		lineHint: "Tap both ends. The camera must have looked square at the machine.",
		rectangleHint: "Tap the four corners in order round it, the known width first.",
		diameter: "Diameter",
		lengthOf: "Length",
		width: "Width",
		height: "Height",
		plus: "give or take",
		nearer: "in front of the plane of motion",
		near: "Which side of the machine was nearer to the camera?",
		sides: {
			left: "Left",
			right: "Right",
			top: "Top",
			bottom: "Bottom"
		},
		plumbHint: "Tap two places on something that hangs straight down, the upper one first: a rope with a weight, an upright. Skip it if the phone was held level.",
		skip: "Skip",
		mirror: "The person faces left in the photo",
		tapNext: "Tap it in the photo",
		again: "Take the last one back",
		optional: "may be skipped",
		camHint: (n) => `Tap around its edge, ${n} places or more, evenly spread.`,
		camCount: (n) => n === 1 ? "1 place" : `${n} places`,
		middle: "Put it in the middle",
		nearerHint: "Two fingers, or the wheel, come nearer.",
		measured: "On a photo, by tapping.",
		error: (plus) => `good to ±${plus}`,
		next: "Next",
		previous: "Back",
		put: "Put it in the room",
		point: (name) => `${name}: arrows move it one pixel, with Shift ten`,
		known: "I have measured this",
		forward: "forward",
		up: "up",
		usualHint: "What stands here already is usual for this family. Measure from any one place, forward and up.",
		tooFew: (n) => n === 1 ? "One more place, please." : `${n} more places, please.`
	}
};
// src/units.ts
var standardGravity = 9.80665;
var pound = .45359237;
var inch = .0254;
var metric = {
	imperial: false,
	force: {
		unit: "N",
		perUnit: 1
	},
	travel: {
		unit: "cm",
		perUnit: .01
	},
	length: {
		unit: "mm",
		perUnit: .001,
		digits: 0
	},
	mass: {
		unit: "kg",
		perUnit: 1
	}
};
var imperial = {
	imperial: true,
	force: {
		unit: "lbf",
		perUnit: pound * standardGravity
	},
	travel: {
		unit: "in",
		perUnit: inch
	},
	length: {
		unit: "in",
		perUnit: inch,
		digits: 2
	},
	mass: {
		unit: "lb",
		perUnit: pound
	}
};
/** fixed writes x with the given digits after the point and a true minus sign. */
function fixed(x, digits) {
	const text = x.toFixed(digits);
	return (Number(text) === 0 ? text.replace("-", "") : text).replace("-", "−");
}
var spaced = (number, unit) => `${number}\u00a0${unit}`;
var force = (u, newtons) => spaced(fixed(newtons / u.force.perUnit, Math.abs(newtons / u.force.perUnit) < 10 ? 1 : 0), u.force.unit);
var travel = (u, metres) => spaced(fixed(metres / u.travel.perUnit, u.imperial ? 1 : 0), u.travel.unit);
var lengthText = (u, metres) => spaced(fixed(metres / u.length.perUnit, u.length.digits), u.length.unit);
var mass = (u, kilograms) => spaced(fixed(kilograms / u.mass.perUnit, kilograms < 10 * u.mass.perUnit ? 1 : 0), u.mass.unit);
/** held returns the mass in kg whose weight is the given force in N. */
var held$1 = (newtons) => newtons / standardGravity;
var work = (joules) => spaced(fixed(joules, joules < 10 ? 1 : 0), "J");
var percent = (share) => spaced(fixed(100 * share, 0), "%");
var ratio = (x) => fixed(x, 2);
// src/state/taste.ts
/** How this reader wants the page: kept in this browser only. */
/** kept returns a signal that remembers its value in this browser, where that is allowed. */
function kept(name, usual) {
	const key = `steelyard.${name}`;
	let first = usual;
	try {
		const stored = localStorage.getItem(key);
		if (stored !== null) first = JSON.parse(stored);
	} catch {}
	const value = y$1(first);
	x(() => {
		try {
			localStorage.setItem(key, JSON.stringify(value.value));
		} catch {}
	});
	return value;
}
var theme = kept("theme", "auto");
var pounds = kept("imperial", false);
var units = O(() => pounds.value ? imperial : metric);
x(() => {
	document.documentElement.dataset.theme = theme.value;
});
// node_modules/preact/jsx-runtime/dist/jsxRuntime.mjs
var f = Symbol.for("pv");
var o = 0;
Array.isArray;
function a(t, e, n, u, a, i) {
	e || (e = {});
	var c, l, p = e;
	if ("ref" in p && "function" != typeof t) for (l in p = {}, e) "ref" == l ? c = e[l] : p[l] = e[l];
	var s = {
		type: t,
		props: p,
		key: n,
		ref: c,
		__k: null,
		__: null,
		__b: 0,
		__e: null,
		__c: null,
		constructor: f,
		__v: --o,
		__i: -1,
		__u: 0
	};
	return (a || i) && (s.__source = a, s.__self = i), n$1.vnode && n$1.vnode(s), s;
}
// src/parts/choice.tsx
/** One of a few, side by side: radio buttons that look like notches. */
function Choice({ label, options, value, choose, hideLabel }) {
	const name = P();
	return /* @__PURE__ */ a("fieldset", {
		class: "choice",
		children: [/* @__PURE__ */ a("legend", {
			class: hideLabel ? "unseen" : void 0,
			children: label
		}), /* @__PURE__ */ a("div", {
			class: "notches",
			children: options.map((o) => /* @__PURE__ */ a("label", { children: [/* @__PURE__ */ a("input", {
				type: "radio",
				name,
				value: o.value,
				checked: o.value === value,
				onChange: () => choose(o.value)
			}), /* @__PURE__ */ a("span", { children: o.name })] }, o.value))
		})]
	});
}
// src/parts/menu.tsx
function Menu({ label, look = "", icon, children }) {
	const box = T(null);
	A$1(() => {
		const away = (e) => {
			if (box.current && !box.current.contains(e.target)) box.current.open = false;
		};
		const moved = () => {
			if (box.current) box.current.open = false;
		};
		document.addEventListener("pointerdown", away);
		addEventListener("hashchange", moved);
		return () => {
			document.removeEventListener("pointerdown", away);
			removeEventListener("hashchange", moved);
		};
	}, []);
	const leave = (e) => {
		if (e.key !== "Escape" || !box.current?.open) return;
		box.current.open = false;
		box.current.querySelector("summary")?.focus();
	};
	return /* @__PURE__ */ a("details", {
		class: `menu ${look}`,
		ref: box,
		onKeyDown: leave,
		children: [/* @__PURE__ */ a("summary", {
			"aria-label": label,
			children: icon
		}), /* @__PURE__ */ a("div", {
			class: "menu-body",
			children
		})]
	});
}
// src/parts/taste.tsx
/** Light or dark, metric or imperial. */
var themes = Object.entries(words.taste.themes).map(([value, name]) => ({
	value,
	name
}));
var systems = [{
	value: "metric",
	name: words.taste.metric
}, {
	value: "imperial",
	name: words.taste.imperial
}];
function TasteMenu() {
	const icon = /* @__PURE__ */ a("svg", {
		viewBox: "0 0 24 24",
		width: "22",
		height: "22",
		"aria-hidden": "true",
		children: [/* @__PURE__ */ a("circle", {
			cx: "12",
			cy: "12",
			r: "8",
			class: "line-icon"
		}), /* @__PURE__ */ a("path", {
			d: "M12 4a8 8 0 0 1 0 16z",
			class: "fill-icon"
		})]
	});
	return /* @__PURE__ */ a(Menu, {
		label: words.taste.label,
		look: "taste",
		icon,
		children: [/* @__PURE__ */ a(Choice, {
			label: words.taste.theme,
			options: themes,
			value: theme.value,
			choose: (v) => {
				theme.value = v;
			}
		}), /* @__PURE__ */ a(Choice, {
			label: words.taste.units,
			options: systems,
			value: pounds.value ? "imperial" : "metric",
			choose: (v) => {
				pounds.value = v === "imperial";
			}
		})]
	});
}
// src/parts/beam.tsx
/** The beam: the way between the screens, with the poise hanging under where one is. */
var places$1 = [
	{
		at: { screen: "room" },
		screens: [
			"room",
			"machine",
			"explain"
		],
		name: words.places.room
	},
	{
		at: {
			screen: "build",
			family: ""
		},
		screens: ["build"],
		name: words.places.build
	},
	{
		at: {
			screen: "compare",
			ids: []
		},
		screens: ["compare"],
		name: words.places.compare
	},
	{
		at: { screen: "people" },
		screens: ["people"],
		name: words.places.people
	}
];
function Beam({ route }) {
	return /* @__PURE__ */ a("header", {
		class: "beam",
		children: [
			/* @__PURE__ */ a("span", {
				class: "mark",
				children: [/* @__PURE__ */ a("svg", {
					viewBox: "0 0 32 32",
					width: "28",
					height: "28",
					"aria-hidden": "true",
					children: [
						/* @__PURE__ */ a("path", {
							class: "mark-beam",
							d: "M2 11h28M8 4v7M22 11v5"
						}),
						/* @__PURE__ */ a("circle", {
							class: "mark-ring",
							cx: "8",
							cy: "5",
							r: "3"
						}),
						/* @__PURE__ */ a("path", {
							class: "mark-poise",
							d: "M17 16h10l3 12H14z"
						})
					]
				}), /* @__PURE__ */ a("span", {
					class: "mark-name",
					children: words.app
				})]
			}),
			/* @__PURE__ */ a("nav", {
				"aria-label": words.places.label,
				children: /* @__PURE__ */ a("ul", { children: places$1.map((p) => {
					const current = p.screens.includes(route.screen);
					return /* @__PURE__ */ a("li", { children: /* @__PURE__ */ a("a", {
						href: write(p.at),
						"aria-current": current ? "page" : void 0,
						children: p.name
					}) }, p.name);
				}) })
			}),
			/* @__PURE__ */ a(TasteMenu, {})
		]
	});
}
// src/parts/notes.tsx
/** sentence begins a message with a capital and ends it with a full stop. */
var sentence = (text) => text.charAt(0).toUpperCase() + text.slice(1) + (/[.!?…]$/.test(text) ? "" : ".");
function TroubleNote({ problem, retry }) {
	const message = problem.code === "refused" && !problem.message ? words.trouble.refused : problem.message;
	return /* @__PURE__ */ a("div", {
		class: "note warn",
		role: "alert",
		children: [
			/* @__PURE__ */ a("strong", { children: words.trouble.title }),
			/* @__PURE__ */ a("p", { children: sentence(message) }),
			retry && /* @__PURE__ */ a("button", {
				type: "button",
				onClick: retry,
				children: words.trouble.retry
			})
		]
	});
}
/** Notice is read out politely; empty, it takes no room. */
function Notice({ text, children }) {
	return /* @__PURE__ */ a("div", {
		class: text ? "note" : "unseen",
		role: "status",
		children: [text, text && children]
	});
}
function ProblemList({ problems }) {
	return /* @__PURE__ */ a("ul", {
		class: "problems",
		children: problems.map((p) => /* @__PURE__ */ a("li", { children: [
			p.line > 0 && /* @__PURE__ */ a("span", {
				class: "where",
				children: words.machine.line(p.line)
			}),
			" ",
			sentence(p.message)
		] }, `${p.line} ${p.column} ${p.path} ${p.message}`))
	});
}
// src/parts/backlink.tsx
/** A link back to where one came from. */
function BackLink({ to, label }) {
	return /* @__PURE__ */ a("a", {
		class: "button back",
		href: write(to),
		title: label,
		children: [/* @__PURE__ */ a("svg", {
			viewBox: "0 0 24 24",
			width: "20",
			height: "20",
			"aria-hidden": "true",
			children: /* @__PURE__ */ a("path", {
				class: "line-icon",
				d: "M15 5l-7 7 7 7"
			})
		}), /* @__PURE__ */ a("span", {
			class: "unseen",
			children: label
		})]
	});
}
// src/server/client.ts
/** Trouble is what the server, or the way to it, had against a request. */
var Trouble = class extends Error {
	problem;
	constructor(problem) {
		super(problem.message);
		this.problem = problem;
	}
};
/** troubleOf returns any failure as a problem to be shown. */
function troubleOf(err) {
	if (err instanceof Trouble) return err.problem;
	return {
		code: "internal",
		message: err instanceof Error ? err.message : String(err)
	};
}
/** addressOf returns where a route is asked. */
function addressOf(route, path = {}, query = {}) {
	const place = route.slice(route.indexOf(" ") + 1).replace(/\{(\w+)\}/g, (_, name) => encodeURIComponent(path[name] ?? ""));
	const search = new URLSearchParams();
	for (const [name, value] of Object.entries(query)) for (const one of Array.isArray(value) ? value : [value]) search.append(name, one);
	return search.size ? `${place}?${search}` : place;
}
async function send(route, o) {
	const raw = o.in instanceof Blob;
	const init = {
		method: route.slice(0, route.indexOf(" ")),
		signal: o.signal ?? null,
		credentials: "same-origin"
	};
	if (o.in !== void 0) {
		init.body = raw ? o.in : JSON.stringify(o.in);
		init.headers = { "Content-Type": raw ? o.in.type : "application/json" };
	}
	let answer;
	try {
		answer = await fetch(addressOf(route, o.path, o.query), init);
	} catch (err) {
		if (o.signal?.aborted) throw err;
		throw new Trouble({
			code: "internal",
			message: words.trouble.unreachable
		});
	}
	if (!answer.ok) throw new Trouble(await problemIn(answer));
	return answer;
}
async function problemIn(answer) {
	try {
		const problem = await answer.json();
		if (problem.message) return problem;
	} catch {}
	return {
		code: "internal",
		message: words.trouble.status(answer.status)
	};
}
/** ask sends a request and returns the answer. It throws a Trouble. */
async function ask(route, o = {}) {
	const answer = await send(route, o);
	if (answer.status === 204) return void 0;
	return (answer.headers.get("Content-Type") ?? "").startsWith("application/json") ? await answer.json() : await answer.blob();
}
/** watch sends a request that is answered by events, tells of progress and returns the last answer. */
async function watch(route, o, progress) {
	const reader = (await send(route, o)).body.pipeThrough(new TextDecoderStream()).getReader();
	let text = "";
	for (;;) {
		const { value, done } = await reader.read();
		if (done) throw new Trouble({
			code: "internal",
			message: words.trouble.unreachable
		});
		text += value;
		for (let end = text.indexOf("\n\n"); end >= 0; end = text.indexOf("\n\n")) {
			const [name, data] = event(text.slice(0, end));
			text = text.slice(end + 2);
			if (name === "progress") progress(data);
			if (name === "failed") throw new Trouble(data);
			if (name === "done") {
				reader.cancel();
				return data;
			}
		}
	}
}
/** event returns name and data of one server-sent event. */
function event(block) {
	let name = "message";
	let data = "";
	for (const line of block.split("\n")) {
		if (line.startsWith("event:")) name = line.slice(6).trim();
		if (line.startsWith("data:")) data += line.slice(5);
	}
	return [name, data ? JSON.parse(data) : null];
}
// src/screens/build/answers.ts
/** blank returns answers to a family's questions before any is given: a competition plate is 450 mm. */
function blank(family, name) {
	return {
		photo: null,
		scale: "plate",
		scaleTaps: [],
		diameter: .45,
		length: 1,
		width: .6,
		height: .4,
		plus: .002,
		nearer: 0,
		near: "",
		plumb: [],
		mirror: false,
		points: family.points.map(() => null),
		cam: [],
		values: family.values.map((v) => ({
			name: v.name,
			value: v.usual,
			plus: 0
		})),
		name
	};
}
/** scaleNeeds returns how many taps the kind of scale needs at least and takes at most. */
function scaleNeeds(kind) {
	if (kind === "line") return [2, 2];
	return kind === "rectangle" ? [4, 4] : [5, 12];
}
/** surveyOf returns the request that measures everything tapped. */
function surveyOf(a) {
	if (!a.photo) throw new Error("no photo to measure on");
	const tapped = a.points.filter((p) => p !== null);
	const survey = {
		width: a.photo.width,
		height: a.photo.height,
		mirror: a.mirror,
		points: tapped
	};
	const taps = a.scaleTaps;
	if (a.scale === "plate") survey.plate = {
		rim: taps,
		diameter: a.diameter,
		plus: a.plus,
		nearer: a.nearer
	};
	else if (a.scale === "line") survey.scale = {
		from: taps[0],
		to: taps[1],
		length: a.length,
		plus: a.plus,
		nearer: a.nearer
	};
	else survey.rectangle = {
		corners: taps.slice(0, 4),
		width: a.width,
		height: a.height,
		plus: a.plus,
		nearer: a.nearer
	};
	if (a.near) survey.near = a.near;
	if (a.cam.length) survey.outline = a.cam;
	if (a.plumb.length === 2) survey.plumb = [a.plumb[0], a.plumb[1]];
	if (tapped[0]) survey.origin = tapped[0];
	return survey;
}
/** buildOf returns the request that makes the sheet, from what was measured by surveyOf. */
function buildOf(family, a, surveyed, measured) {
	const points = [];
	let i = 0;
	family.points.forEach((asked, k) => {
		if (a.points[k] === null) return;
		const place = surveyed.places[i++];
		if (place) points.push({
			name: asked.name,
			at: place.at,
			plus: place.plus
		});
	});
	return {
		name: a.name,
		points,
		values: a.values,
		...surveyed.outline.length ? { cam: surveyed.outline } : {},
		measured,
		look: {
			frames: "all",
			structure: true
		}
	};
}
// src/drawing/place.ts
var add = (a, b) => [a[0] + b[0], a[1] + b[1]];
var sub = (a, b) => [a[0] - b[0], a[1] - b[1]];
var times = (a, k) => [a[0] * k, a[1] * k];
var lerp = (a, b, t) => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
var length = (a) => Math.hypot(a[0], a[1]);
var distance = (a, b) => Math.hypot(a[0] - b[0], a[1] - b[1]);
/** unit returns the direction of a, or [0, 0] if it has none. */
function unit(a) {
	const l = length(a);
	return l > 0 ? [a[0] / l, a[1] / l] : [0, 0];
}
/** moved returns a mover of places given at the measured pose to where they are in the given pose. */
function moved(pose) {
	const c = Math.cos(pose.turn);
	const s = Math.sin(pose.turn);
	return (p) => [pose.x + c * p[0] - s * p[1], pose.y + s * p[0] + c * p[1]];
}
/** around returns the smallest box that holds the places, or null without any. */
function around(places) {
	let box = null;
	for (const p of places) box = box ? {
		low: [Math.min(box.low[0], p[0]), Math.min(box.low[1], p[1])],
		high: [Math.max(box.high[0], p[0]), Math.max(box.high[1], p[1])]
	} : {
		low: p,
		high: p
	};
	return box;
}
// src/drawing/view.ts
/** Where the ground frame lies on the screen. */
/** onScreen returns where p (m) is on the screen, px. */
var onScreen = (v, p) => [v.origin[0] + p[0] * v.scale, v.origin[1] - p[1] * v.scale];
/** onGround returns the place in m that q (px) shows. */
var onGround = (v, q) => [(q[0] - v.origin[0]) / v.scale, (v.origin[1] - q[1]) / v.scale];
/** fit returns the view that shows the box as large as it goes, centred, with an edge of margin px. */
function fit(box, size, margin) {
	const wide = Math.max(box.high[0] - box.low[0], .001);
	const tall = Math.max(box.high[1] - box.low[1], .001);
	const room = {
		width: Math.max(size.width - 2 * margin, 1),
		height: Math.max(size.height - 2 * margin, 1)
	};
	const scale = Math.min(room.width / wide, room.height / tall);
	const middle = lerp(box.low, box.high, .5);
	return {
		scale,
		origin: [size.width / 2 - middle[0] * scale, size.height / 2 + middle[1] * scale]
	};
}
/** zoomed returns the view magnified by the factor with the place under q (px) held still. */
function zoomed(v, q, factor) {
	return {
		scale: v.scale * factor,
		origin: lerp(q, v.origin, factor)
	};
}
/** panned returns the view shifted by (right, down) px. */
var panned = (v, by) => ({
	...v,
	origin: [v.origin[0] + by[0], v.origin[1] + by[1]]
});
/** pinched returns the view after two fingers moved from one pair of places to another, px. */
function pinched(v, from, to) {
	const before = Math.max(distance(from[0], from[1]), 1);
	const middle = lerp(from[0], from[1], .5);
	const now = lerp(to[0], to[1], .5);
	return panned(zoomed(v, middle, distance(to[0], to[1]) / before), [now[0] - middle[0], now[1] - middle[1]]);
}
/** within returns a magnification kept between a quarter and twelve times that of the fitted view. */
function within(v, fitted, q) {
	const factor = v.scale / fitted.scale;
	const kept = Math.min(12, Math.max(.25, factor));
	return kept === factor ? v : zoomed(v, q, kept / factor);
}
// src/drawing/ribbon.ts
/** spike is how many times the force that nine places in ten keep below is still drawn to scale. */
var spike = 3;
/** column returns the curve's force in the phase. */
var column = (c, phase) => phase === "lifting" ? c.lift : phase === "lowering" ? c.lower : c.hold;
var numbers$4 = (column) => column.map((f) => f ?? NaN);
/** ribbonOf reads the ribbon off a curve. A band of another phase, or of none, is left out. */
function ribbonOf(c, phase, measured) {
	const band = measured?.phase === phase || measured && !c.rubs ? measured : null;
	const force = numbers$4(column(c, phase));
	return {
		base: c.contact,
		side: c.normal,
		force,
		low: band ? numbers$4(band.low).map((f, k) => Number.isNaN(f) ? force[k] : f) : force,
		high: band ? numbers$4(band.high).map((f, k) => Number.isNaN(f) ? force[k] : f) : force,
		thirds: [at$1(c.travel, 1 / 3), at$1(c.travel, 2 / 3)]
	};
}
/** withPerson adds what a person can produce. */
var withPerson = (r, person) => person ? {
	...r,
	can: numbers$4(person.can)
} : r;
/** at returns the position of the curve nearest to the share (0 to 1) of its travel. */
function at$1(travel, share) {
	const wanted = (travel.at(-1) ?? 0) * share;
	let low = 0;
	let high = travel.length - 1;
	while (high - low > 1) {
		const middle = low + high >> 1;
		if (travel[middle] <= wanted) low = middle;
		else high = middle;
	}
	return high > 0 && travel[high] - wanted < wanted - travel[low] ? high : low;
}
/** ceiling returns the force in N that pictures are scaled to: the greatest, unless a spike stands far above the rest. */
function ceiling(r) {
	const sizes = r.force.map((f, k) => Math.max(Math.abs(f), Math.abs(r.low[k]), Math.abs(r.high[k]))).filter((f) => !Number.isNaN(f)).sort((a, b) => a - b);
	if (!sizes.length) return 1;
	return Math.max(1, Math.min(sizes.at(-1), spike * sizes[Math.floor(.9 * (sizes.length - 1))]));
}
/** edge returns where the ribbon's edge is at position k for the force, px. */
function edge$1(l, k, force) {
	const n = l.ribbon.side[k];
	const wide = Math.max(-l.full, Math.min(l.full, force)) * l.perNewton;
	return add(onScreen(l.view, l.ribbon.base[k]), times([n[0], -n[1]], wide));
}
/** runs returns the stretches [from, to) of positions that have a force. */
function runs(force) {
	const out = [];
	let from = 0;
	for (let k = 0; k <= force.length; k++) if (k === force.length || Number.isNaN(force[k])) {
		if (k > from + 1) out.push([from, k]);
		from = k + 1;
	}
	return out;
}
/** sure returns the part of a force between low and high that is there in any case. */
var sure = (low, high) => low > 0 ? low : high < 0 ? high : 0;
/** edges returns the edge over the positions from, …, to-1. */
function edges(l, [from, to], force) {
	const out = [];
	for (let k = from; k < to; k++) out.push(edge$1(l, k, force(k)));
	return out;
}
/** mostCan is how far beyond the greatest force what a person can produce is still shown. */
var mostCan = 1.6;
/** fitWith returns the view that shows the machine's box and a ribbon `wide` px at its widest. */
function fitWith(machine, ribbon, wide, full, size, margin) {
	let view = fit(machine, size, margin);
	for (let round = 0; round < 4; round++) {
		const laid = {
			ribbon,
			view,
			perNewton: wide / full,
			full
		};
		const box = {
			low: [...machine.low],
			high: [...machine.high]
		};
		ribbon.base.forEach((_, k) => {
			const can = Math.min(ribbon.can?.[k] ?? 0, mostCan * full);
			for (const f of [
				0,
				ribbon.low[k],
				ribbon.high[k],
				can
			]) {
				if (Number.isNaN(f)) continue;
				const p = onGround(view, edge$1(laid, k, f));
				box.low = [Math.min(box.low[0], p[0]), Math.min(box.low[1], p[1])];
				box.high = [Math.max(box.high[0], p[0]), Math.max(box.high[1], p[1])];
			}
		});
		view = fit(box, size, margin);
	}
	return view;
}
// src/drawing/path.ts
/** SVG path data from places in px. */
var at = (p) => `${p[0].toFixed(1)} ${p[1].toFixed(1)}`;
/** polyline returns an open path through the places; empty without any. */
var polyline = (places) => places.length ? `M${places.map(at).join("L")}` : "";
/** polygon returns the closed path through the places. */
var polygon = (places) => places.length ? `${polyline(places)}Z` : "";
/** area returns the closed path along a and back along b. */
var area = (a, b) => polygon([...a, ...[...b].reverse()]);
var segment = (a, b) => `M${at(a)}L${at(b)}`;
/** head returns an arrow head of the given size with its tip at `tip`, pointing from `from`. */
function head(from, tip, size) {
	const u = unit(sub(tip, from));
	const side = [-u[1], u[0]];
	const back = sub(tip, times(u, size));
	return polygon([
		tip,
		add(back, times(side, size * .42)),
		sub(back, times(side, size * .42))
	]);
}
/** bracket returns the short strokes of a support below a pin at p, each side s px wide: a foot and its hatching. */
function bracket(p, s) {
	const [x, y] = p;
	const foot = segment([x - s, y + s * 1.15], [x + s, y + s * 1.15]);
	const legs = polyline([
		[x - s * .7, y + s * 1.15],
		[x, y],
		[x + s * .7, y + s * 1.15]
	]);
	const hatch = [
		-.7,
		-.1,
		.5
	].map((k) => segment([x + k * s, y + s * 1.15], [x + (k - .35) * s, y + s * 1.6])).join("");
	return foot + legs + hatch;
}
// src/drawing/ticks.ts
/** Round numbers for axes. */
/** step returns the least of 1, 2, 2.5 and 5 times a power of ten that parts the span into at most `most` pieces. */
function step(span, most) {
	const least = span / Math.max(1, most);
	if (!(least > 0)) return 1;
	const power = 10 ** Math.floor(Math.log10(least));
	return power * ([
		1,
		2,
		2.5,
		5,
		10
	].find((k) => k * power >= least * (1 - 1e-9)) ?? 10);
}
/** ticks returns the multiples of a round step from low to high, at most `most` pieces. */
function ticks(low, high, most) {
	const by = step(high - low, most);
	const out = [];
	for (let k = Math.ceil(low / by - 1e-9); k * by <= high + by * 1e-9; k++) out.push(k === 0 ? 0 : k * by);
	return out;
}
/** rounded widens the range to round numbers that hold 0. */
function rounded([low, high], most) {
	const from = Math.min(0, low);
	const to = Math.max(0, high, from + 1e-9);
	const by = step(to - from, most);
	return [Math.floor(from / by + 1e-9) * by, Math.ceil(to / by - 1e-9) * by];
}
// src/drawing/chart.ts
/** The plain curve: where its axes, columns and cursor lie, px. */
var margin = {
	left: 46,
	top: 24,
	right: 12,
	bottom: 36
};
/** axesFor returns axes in the size over the ranges; y is widened to round numbers that hold 0. */
function axesFor(size, x, y) {
	const box = {
		left: margin.left,
		top: margin.top,
		right: size.width - margin.right,
		bottom: size.height - margin.bottom
	};
	return {
		box,
		x,
		y: rounded(y, yTicks(box.bottom - box.top))
	};
}
var yTicks = (tall) => Math.max(2, Math.min(6, Math.floor(tall / 34)));
var xAt = (a, x) => a.box.left + (x - a.x[0]) / (a.x[1] - a.x[0] || 1) * (a.box.right - a.box.left);
var yAt = (a, y) => a.box.bottom - (y - a.y[0]) / (a.y[1] - a.y[0] || 1) * (a.box.bottom - a.box.top);
/** shareAt returns which share of the x range lies under the px, kept within 0 and 1. */
var shareAt = (a, px) => Math.min(1, Math.max(0, (px - a.box.left) / (a.box.right - a.box.left || 1)));
var ticksX = (a) => ticks(a.x[0], a.x[1], Math.max(2, Math.floor((a.box.right - a.box.left) / 60)));
var ticksY = (a) => ticks(a.y[0], a.y[1], yTicks(a.box.bottom - a.box.top));
/** clipped keeps what leaves the axes just outside them, so that a spike cannot run over the page. */
function clipped(a, y) {
	return Math.max(a.box.top - 40, Math.min(a.box.bottom + 40, yAt(a, y)));
}
/** line returns the path of a column; NaN parts it. */
function line(a, xs, ys) {
	return runs(ys).map(([from, to]) => polyline(places(a, xs, ys, from, to))).join("");
}
/** between returns the area between two columns with the same gaps. */
function between(a, xs, low, high) {
	return runs(low).map(([from, to]) => area(places(a, xs, low, from, to), places(a, xs, high, from, to))).join("");
}
function places(a, xs, ys, from, to) {
	const out = [];
	for (let k = from; k < to; k++) out.push([xAt(a, xs[k]), clipped(a, ys[k])]);
	return out;
}
/** spread returns the range of several columns; a spike counts up to the ceiling. */
function spread(columns, most) {
	let [low, high] = [0, 0];
	for (const column of columns) for (const y of column) {
		if (Number.isNaN(y)) continue;
		low = Math.min(low, Math.max(y, -most));
		high = Math.max(high, Math.min(y, most));
	}
	return [low, high];
}
/** held returns the range an axis keeps: the one it had, unless the new one leaves it or fills less than half. */
function held(before, now) {
	if (!before) return now;
	const leaves = now[0] < before[0] || now[1] > before[1];
	const small = now[1] - now[0] < .5 * (before[1] - before[0]);
	return leaves || small ? now : before;
}
// src/parts/size.ts
/** useSize returns a reference for an element and its size in px; null until it is laid out. */
function useSize() {
	const ref = T(null);
	const [size, setSize] = d$2(null);
	F$1(() => {
		const element = ref.current;
		if (!element) return;
		const read = () => {
			const { width, height } = element.getBoundingClientRect();
			setSize((s) => s && s.width === width && s.height === height ? s : {
				width,
				height
			});
		};
		read();
		const observer = new ResizeObserver(read);
		observer.observe(element);
		return () => observer.disconnect();
	}, []);
	return [ref, size];
}
// src/parts/chart.tsx
/** axesOf returns the axes of a force over a travel. */
var axesOf = (u) => ({
	x: {
		...u.travel,
		title: words.chart.travel(u.travel.unit)
	},
	y: {
		...u.force,
		title: u.force.unit
	}
});
function Chart(props) {
	const [ref, size] = useSize();
	return /* @__PURE__ */ a("div", {
		class: "chart",
		ref,
		children: size && size.width > 120 && size.height > 80 && /* @__PURE__ */ a(Drawn$2, {
			...props,
			size
		})
	});
}
function Drawn$2(props) {
	const { series, band, size } = props;
	const last = T(null);
	const columns = series.map((s) => s.y);
	if (band) columns.push(band.low, band.high);
	if (props.crosses) columns.push(props.crosses.map((c) => c.y));
	const range = spread(columns, props.most);
	last.current = held(last.current, range);
	const perForce = props.y.perUnit;
	const axes = axesFor(size, [0, props.length / props.x.perUnit], [last.current[0] / perForce, last.current[1] * 1.04 / perForce]);
	const shown = series.map((s) => ({
		...s,
		x: s.x.map((x) => x / props.x.perUnit),
		y: s.y.map((y) => y / perForce)
	}));
	const first = shown[0];
	const id = P().replace(/\W/g, "");
	const read = (e) => {
		if (e.type === "pointermove" && e.pointerType !== "mouse" && !e.buttons) return;
		const left = e.currentTarget.getBoundingClientRect().left;
		props.scrub?.(shareAt(axes, e.clientX - left));
	};
	return /* @__PURE__ */ a("svg", {
		class: "plot",
		width: size.width,
		height: size.height,
		viewBox: `0 0 ${size.width} ${size.height}`,
		role: "img",
		"aria-label": props.label,
		onPointerDown: read,
		onPointerMove: (e) => e.buttons && read(e),
		children: [
			/* @__PURE__ */ a("defs", { children: [/* @__PURE__ */ a("pattern", {
				id,
				width: "6",
				height: "6",
				patternUnits: "userSpaceOnUse",
				patternTransform: "rotate(45)",
				children: /* @__PURE__ */ a("path", {
					class: "hatch-lift",
					d: "M0 0V6"
				})
			}), /* @__PURE__ */ a("clipPath", {
				id: `${id}c`,
				children: /* @__PURE__ */ a("rect", {
					x: axes.box.left,
					y: axes.box.top - 2,
					width: Math.max(0, axes.box.right - axes.box.left + 6),
					height: Math.max(0, axes.box.bottom - axes.box.top + 4)
				})
			})] }),
			/* @__PURE__ */ a(Thirds, { axes }),
			/* @__PURE__ */ a(Scales, {
				axes,
				x: props.x,
				y: props.y
			}),
			/* @__PURE__ */ a("g", {
				"clip-path": `url(#${id}c)`,
				children: [band && /* @__PURE__ */ a("path", {
					class: "chart-band",
					fill: `url(#${id})`,
					d: between(axes, first.x, band.low.map((y) => y / perForce), band.high.map((y) => y / perForce))
				}), [...shown].reverse().map((s) => /* @__PURE__ */ a("path", {
					class: `curve ${s.look}`,
					d: line(axes, s.x, s.y)
				}, s.name))]
			}),
			props.crosses?.map((c) => {
				const [px, py] = [xAt(axes, c.x / props.x.perUnit), yAt(axes, c.y / perForce)];
				return /* @__PURE__ */ a("path", {
					class: "cross",
					d: `M${px - 5} ${py - 5}l10 10M${px - 5} ${py + 5}l10 -10`
				}, `${c.x} ${c.y}`);
			}),
			/* @__PURE__ */ a(Cursor, {
				axes,
				x: props.cursor.x / props.x.perUnit,
				ys: props.cursor.readings.map((y) => y === null ? null : y / perForce),
				unit: props.y.unit
			})
		]
	});
}
function Thirds({ axes }) {
	const { left, right, top, bottom } = axes.box;
	const wide = (right - left) / 3;
	return /* @__PURE__ */ a("g", {
		class: "chart-thirds",
		children: words.thirds.map((name, i) => /* @__PURE__ */ a("g", { children: [i !== 1 && /* @__PURE__ */ a("rect", {
			x: left + i * wide,
			y: top,
			width: Math.max(0, wide),
			height: Math.max(0, bottom - top)
		}), /* @__PURE__ */ a("text", {
			x: left + (i + .5) * wide,
			y: top - 8,
			children: name
		})] }, name))
	});
}
function Scales({ axes, x, y: yAxis }) {
	const { left, right, top, bottom } = axes.box;
	const ys = ticksY(axes);
	const digits = (values) => values.some((v) => Math.abs(v - Math.round(v)) > 1e-6) ? 1 : 0;
	const xs = ticksX(axes);
	return /* @__PURE__ */ a("g", {
		class: "chart-scales",
		children: [
			ys.map((y) => /* @__PURE__ */ a("g", { children: [/* @__PURE__ */ a("path", {
				class: y === 0 ? "axis" : "rule",
				d: `M${left} ${yAt(axes, y).toFixed(1)}H${right}`
			}), /* @__PURE__ */ a("text", {
				class: "y",
				x: left - 6,
				y: yAt(axes, y) + 4,
				children: fixed(y, digits(ys))
			})] }, y)),
			xs.map((x) => /* @__PURE__ */ a("text", {
				class: "x",
				x: xAt(axes, x),
				y: bottom + 16,
				children: fixed(x, digits(xs))
			}, x)),
			/* @__PURE__ */ a("text", {
				class: "title-y",
				x: 4,
				y: top - 8,
				children: yAxis.title
			}),
			/* @__PURE__ */ a("text", {
				class: "title-x",
				x: right,
				y: bottom + 31,
				children: x.title
			})
		]
	});
}
/** Cursor crosses the curves and reads them; with several the numbers stand in the legend. */
function Cursor({ axes, x, ys, unit }) {
	const px = xAt(axes, x);
	const height = (y) => Math.max(axes.box.top, Math.min(axes.box.bottom, yAt(axes, y)));
	return /* @__PURE__ */ a("g", {
		class: "cursor",
		children: [
			/* @__PURE__ */ a("path", { d: `M${px.toFixed(1)} ${axes.box.top}V${axes.box.bottom}` }),
			ys.map((y, i) => y !== null && /* @__PURE__ */ a("circle", {
				class: `at-${i + 1}`,
				cx: px,
				cy: height(y),
				r: 5
			}, i)),
			ys.length === 1 && /* @__PURE__ */ a(CursorText, {
				axes,
				px,
				y: ys[0] ?? null,
				py: height(ys[0] ?? axes.y[0]),
				unit
			})
		]
	});
}
function CursorText({ axes, px, y, py, unit }) {
	const text = y === null ? words.chart.gap : `${fixed(y, Math.abs(y) < 10 ? 1 : 0)} ${unit}`;
	const right = px > axes.box.right - 64;
	const above = py > axes.box.top + 26;
	return /* @__PURE__ */ a("text", {
		class: "halo",
		x: right ? px - 9 : px + 9,
		y: above ? py - 10 : py + 22,
		"text-anchor": right ? "end" : "start",
		children: text
	});
}
/** Legend names the lines of a chart by their look as well as their colour. */
function Legend({ entries }) {
	return /* @__PURE__ */ a("ul", {
		class: "legend",
		children: entries.map((e) => /* @__PURE__ */ a("li", { children: [
			/* @__PURE__ */ a("svg", {
				width: "30",
				height: "10",
				"aria-hidden": "true",
				children: e.look === "cross" ? /* @__PURE__ */ a("path", {
					class: "cross",
					d: "M10 0l10 10M10 10l10 -10"
				}) : e.look === "chart-band" ? /* @__PURE__ */ a("rect", {
					class: "legend-band",
					x: "1",
					y: "1",
					width: "28",
					height: "8"
				}) : /* @__PURE__ */ a("path", {
					class: `curve ${e.look}`,
					d: "M1 5H29"
				})
			}),
			e.name,
			e.reading && /* @__PURE__ */ a("strong", { children: [" ", e.reading] })
		] }, e.name))
	});
}
// src/drawing/labels.ts
/** Places short texts beside what they name, clear of each other. */
var textHeight = 15;
var em = 13;
/** widthOf estimates the width of a label in px: what a face of middling width takes. */
var widthOf = (text, bold = false) => text.length * em * (bold ? .72 : .56) + 4;
/** away lists where a label may stand: direction from what it names, and how far. */
var away = [
	10,
	22,
	44,
	70
].flatMap((d) => [
	[1, 0],
	[-1, 0],
	[.7, -.8],
	[-.7, -.8],
	[.7, .8],
	[-.7, .8],
	[0, -1],
	[0, 1]
].map(([x, y]) => [
	x * d,
	y * d,
	d
]));
/**
* place sets the labels in order. Each takes the first place that is within
* the size, off every label before it and off the avoided places; a label with
* no such place is left out.
*/
function place$1(labels, size, avoid) {
	const taken = [];
	const out = [];
	for (const label of labels) {
		const wide = widthOf(label.text, label.bold);
		for (const [dx, dy, d] of away) {
			const x = label.at[0] + dx - (dx < -1 ? wide : Math.abs(dx) <= 1 ? wide / 2 : 0);
			const y = label.at[1] + dy + textHeight * .35;
			const box = {
				low: [x - 2, y - textHeight * .85],
				high: [x + wide + 2, y + textHeight * .25]
			};
			if (!inside(box, size) || taken.some((b) => overlap(b, box)) || avoid.some((p) => holds(box, p))) continue;
			taken.push(box);
			out.push({
				...label,
				x,
				y,
				lead: d > 30
			});
			break;
		}
	}
	return out;
}
var inside = (b, s) => b.low[0] >= 0 && b.low[1] >= 0 && b.high[0] <= s.width && b.high[1] <= s.height;
var overlap = (a, b) => a.low[0] < b.high[0] && b.low[0] < a.high[0] && a.low[1] < b.high[1] && b.low[1] < a.high[1];
var holds = (b, p) => p[0] > b.low[0] && p[0] < b.high[0] && p[1] > b.low[1] && p[1] < b.high[1];
/** along returns places every `gap` px on the way from a to b, for labels to keep off. */
function along(a, b, gap = 10) {
	const n = Math.max(1, Math.ceil(distance(a, b) / gap));
	return Array.from({ length: n + 1 }, (_, i) => [a[0] + (b[0] - a[0]) * i / n, a[1] + (b[1] - a[1]) * i / n]);
}
// src/parts/figure/arms.tsx
var roomForLength = 46;
/** Arms draws each arm from its axis square to the line its force acts along, with its length. */
function Arms({ stage, kinds }) {
	return /* @__PURE__ */ a("g", {
		class: "arms",
		children: stage.frame.arms.filter((a) => kinds.has(a.kind)).map((a$10) => /* @__PURE__ */ a(OneArm, {
			arm: a$10,
			stage
		}, `${a$10.kind} ${a$10.name}`))
	});
}
function OneArm({ arm, stage }) {
	const [axis, foot, acts] = [
		arm.axis,
		arm.foot,
		arm.acts
	].map((p) => onScreen(stage.view, p));
	const long = distance(axis, foot);
	if (long < 2) return null;
	const beyond = add(foot, times(unit(sub(foot, acts)), 14));
	return /* @__PURE__ */ a("g", {
		class: `arm ${arm.kind}-arm`,
		children: [
			/* @__PURE__ */ a("path", {
				class: "line-of-force",
				d: segment(acts, beyond)
			}),
			/* @__PURE__ */ a("path", {
				class: "lever",
				d: segment(axis, foot)
			}),
			/* @__PURE__ */ a("path", {
				class: "tip",
				d: head(axis, foot, 8) + head(foot, axis, 8)
			}),
			long > roomForLength ? /* @__PURE__ */ a(ArmLength, {
				at: lerp(axis, foot, .5),
				along: sub(foot, axis),
				text: lengthText(stage.units, arm.length)
			}) : /* @__PURE__ */ a("text", {
				class: "halo beside",
				x: beyond[0] + 6,
				y: beyond[1] + 14,
				children: lengthText(stage.units, arm.length)
			})
		]
	});
}
function ArmLength({ at, along, text }) {
	let turn = Math.atan2(along[1], along[0]) * 180 / Math.PI;
	if (Math.abs(turn) > 90) turn -= Math.sign(turn) * 180;
	return /* @__PURE__ */ a("text", {
		class: "halo",
		transform: `translate(${at[0].toFixed(1)} ${at[1].toFixed(1)}) rotate(${turn.toFixed(1)})`,
		dy: "-5",
		children: text
	});
}
/** Gravity draws the plumb line through every load. */
function Gravity({ stage }) {
	return /* @__PURE__ */ a("g", {
		class: "gravity",
		children: stage.frame.forces.filter((f) => f.kind === "weight").map((f) => {
			const at = onScreen(stage.view, f.at);
			return /* @__PURE__ */ a("path", { d: segment([at[0], at[1] - 26], [at[0], stage.size.height]) }, f.name);
		})
	});
}
var arrowLeast = 14;
var arrowMost = 130;
/** arrow returns both ends of a force's arrow on the screen, or null for one too small to draw. */
function arrow(stage, f) {
	const size = length(f.vector);
	if (!(size > .5)) return null;
	const at = onScreen(stage.view, f.at);
	const long = Math.min(arrowMost, Math.max(arrowLeast, size * stage.laid.perNewton));
	return [at, add(at, times([f.vector[0], -f.vector[1]], long / size))];
}
/** Forces draws the forces of the kinds wanted as arrows from where they act. */
function Forces({ stage, kinds }) {
	return /* @__PURE__ */ a("g", {
		class: "forces",
		children: stage.frame.forces.filter((f) => kinds.has(f.kind)).map((f, i) => {
			const ends = arrow(stage, f);
			if (!ends) return null;
			const short = lerp(ends[0], ends[1], Math.max(0, 1 - 8 / Math.max(1, distance(ends[0], ends[1]))));
			return /* @__PURE__ */ a("g", {
				class: `force ${f.kind}-force`,
				children: [/* @__PURE__ */ a("path", {
					class: "shaft",
					d: segment(ends[0], short)
				}), /* @__PURE__ */ a("path", {
					class: "tip",
					d: head(ends[0], ends[1], 12)
				})]
			}, `${f.kind} ${f.name} ${i}`);
		})
	});
}
// src/drawing/capsule.ts
/** capsule returns the outline of a segment from a (radius ra) to b (radius rb), px. */
function capsule(a, ra, b, rb) {
	const dx = b[0] - a[0];
	const dy = b[1] - a[1];
	const d = Math.hypot(dx, dy);
	if (d <= Math.abs(ra - rb)) return disc(ra >= rb ? a : b, Math.max(ra, rb));
	const along = Math.atan2(dy, dx);
	const off = Math.acos((ra - rb) / d);
	const at = (c, r, angle) => `${(c[0] + r * Math.cos(angle)).toFixed(1)} ${(c[1] + r * Math.sin(angle)).toFixed(1)}`;
	const [one, two] = [along + off, along - off];
	const arc = (r, large) => `A${r.toFixed(1)} ${r.toFixed(1)} 0 ${large ? 1 : 0} 1 `;
	return `M${at(a, ra, one)}${arc(ra, off < Math.PI / 2)}${at(a, ra, two)}L${at(b, rb, two)}${arc(rb, off > Math.PI / 2)}${at(b, rb, one)}Z`;
}
function disc(c, r) {
	const text = r.toFixed(1);
	return `M${(c[0] - r).toFixed(1)} ${c[1].toFixed(1)}a${text} ${text} 0 1 1 ${(2 * r).toFixed(1)} 0a${text} ${text} 0 1 1 ${(-2 * r).toFixed(1)} 0Z`;
}
// src/parts/figure/body.tsx
/** BodyShape draws the segments; stale tells that the machine has moved on since the person was put on it. */
function BodyShape({ stage, body, stale }) {
	const at = (p) => onScreen(stage.view, p);
	const px = (metres) => metres * stage.view.scale;
	return /* @__PURE__ */ a("g", {
		class: stale ? "body stale" : "body",
		children: [body.segments.map((s) => /* @__PURE__ */ a("path", {
			class: s.works ? "segment works" : "segment",
			d: capsule(at(s.from), px(s.near), at(s.to), px(s.far))
		}, s.name)), body.joints.map((j) => {
			const [x, y] = at(j.at);
			return /* @__PURE__ */ a("circle", {
				class: "joint",
				cx: x,
				cy: y,
				r: 3.5
			}, j.name);
		})]
	});
}
// src/drawing/weights.ts
var stackWide = .26;
var stackHeight = .006;
var stackLeast = .1;
var stackMost = .7;
var stackPlate = .03;
/** stackBox returns the block of a weight stack that hangs from the place, m. */
function stackBox(w, at) {
	const tall = Math.min(Math.max(stackHeight * w.mass, stackLeast), stackMost);
	return {
		low: [at[0] - stackWide / 2, at[1] - tall],
		high: [at[0] + stackWide / 2, at[1]]
	};
}
// src/parts/figure/stage.ts
/** screen returns a mover of places on the link, at the measured pose in m, to the screen. */
function screen(s, link) {
	const pose = s.frame.poses[link];
	const move = pose ? moved(pose) : (p) => p;
	return (p) => onScreen(s.view, move(p));
}
// src/parts/figure/machine.tsx
/** Links draws each moving link as a rounded bar along its pieces. */
function Links({ stage }) {
	return /* @__PURE__ */ a("g", {
		class: "links",
		children: stage.drawing.links.map((link, i) => {
			if (i === 0 || link.stack) return null;
			const at = screen(stage, i);
			const d = link.pieces.map(([a, b]) => segment(at(a), at(b))).join("");
			return /* @__PURE__ */ a("g", { children: [/* @__PURE__ */ a("path", {
				class: "link-rim",
				d
			}), /* @__PURE__ */ a("path", {
				class: "link-core",
				d
			})] }, link.name);
		})
	});
}
function Guides({ stage }) {
	return /* @__PURE__ */ a("g", {
		class: "guides",
		children: stage.drawing.guides.map((g) => {
			const at = screen(stage, g.on);
			return /* @__PURE__ */ a("path", { d: segment(at(g.from), at(g.to)) }, g.name);
		})
	});
}
function Pins({ stage }) {
	return /* @__PURE__ */ a("g", {
		class: "pins",
		children: stage.drawing.pins.map((pin) => /* @__PURE__ */ a(OnePin, {
			pin,
			at: screen(stage, pin.on)(pin.at)
		}, pin.name))
	});
}
function OnePin({ pin, at }) {
	return /* @__PURE__ */ a("g", { children: [pin.ground && /* @__PURE__ */ a("path", {
		class: "support",
		d: bracket(at, 11)
	}), /* @__PURE__ */ a("circle", {
		class: "pin",
		cx: at[0],
		cy: at[1],
		r: pin.ground ? 5.5 : 4
	})] });
}
function Wheels({ stage }) {
	return /* @__PURE__ */ a("g", {
		class: "wheels",
		children: stage.drawing.wheels.map((w) => /* @__PURE__ */ a(OneWheel, {
			wheel: w,
			stage
		}, w.name))
	});
}
function OneWheel({ wheel, stage }) {
	const at = screen(stage, wheel.on);
	const axis = at(wheel.axis);
	const mark = wheel.outline[0];
	return /* @__PURE__ */ a("g", {
		class: wheel.cam ? "wheel cam" : "wheel",
		children: [
			/* @__PURE__ */ a("path", { d: polygon(wheel.outline.map(at)) }),
			wheel.cam && mark && /* @__PURE__ */ a("path", {
				class: "spoke",
				d: segment(axis, at(mark))
			}),
			/* @__PURE__ */ a("circle", {
				class: "hub",
				cx: axis[0],
				cy: axis[1],
				r: 2.5
			})
		]
	});
}
/** Lines draws ropes, springs, bands and dampers where they now run. */
function Lines$1({ stage }) {
	return /* @__PURE__ */ a("g", {
		class: "lines",
		children: stage.drawing.lines.map((line, i) => {
			const course = stage.frame.lines[i];
			if (!course) return null;
			const places = course.course.map((p) => onScreen(stage.view, p));
			const slack = course.slack ? " slack" : "";
			return /* @__PURE__ */ a("path", {
				class: `line ${kindOf(line)}${slack}`,
				d: courseOf(line, places)
			}, line.name);
		})
	});
}
var kindOf = (line) => line.kind.replace(" ", "-");
/** courseOf draws a coil for a spring, otherwise the course as it is. */
function courseOf(line, places) {
	const [a, b] = [places[0], places.at(-1)];
	if (line.kind !== "spring" || !a || !b) return polyline(places);
	const across = [-(b[1] - a[1]), b[0] - a[0]];
	const l = Math.hypot(...across) || 1;
	const coil = [a];
	for (let i = 1; i < 18; i++) {
		const t = .1 + .8 * i / 18;
		const side = (i % 2 ? 6 : -6) / l;
		coil.push([a[0] + (b[0] - a[0]) * t + across[0] * side, a[1] + (b[1] - a[1]) * t + across[1] * side]);
	}
	return polyline([...coil, b]);
}
function Weights({ stage }) {
	return /* @__PURE__ */ a("g", {
		class: "weights",
		children: [stage.drawing.weights.filter((w) => w.mass > 0).map((w) => /* @__PURE__ */ a(OneWeight, {
			weight: w,
			stage
		}, w.name)), stage.frame.chains.map((c) => {
			const [top, foot] = [onScreen(stage.view, c.top), onScreen(stage.view, c.foot)];
			const heap = c.heap ? segment([foot[0] - 12, foot[1]], [foot[0] + 12, foot[1]]) : "";
			return /* @__PURE__ */ a("path", {
				class: "chain",
				d: segment(top, foot) + heap
			}, c.name);
		})]
	});
}
function OneWeight({ weight, stage }) {
	const at = screen(stage, weight.on)(weight.at);
	const role = weight.load ? "weight" : "weight own";
	if (weight.stack) return /* @__PURE__ */ a(Stack, {
		weight,
		at,
		scale: stage.view.scale
	});
	return /* @__PURE__ */ a("g", {
		class: role,
		children: [/* @__PURE__ */ a("circle", {
			cx: at[0],
			cy: at[1],
			r: Math.max(3, weight.radius * stage.view.scale)
		}), /* @__PURE__ */ a("circle", {
			class: "centre",
			cx: at[0],
			cy: at[1],
			r: 3
		})]
	});
}
function Stack({ weight, at, scale }) {
	const box = stackBox(weight, [0, 0]);
	const [left, wide] = [at[0] + box.low[0] * scale, (box.high[0] - box.low[0]) * scale];
	const tall = (box.high[1] - box.low[1]) * scale;
	const gap = stackPlate * scale;
	let plates = "";
	for (let y = gap; y < tall - gap / 2; y += gap) plates += segment([left, at[1] + y], [left + wide, at[1] + y]);
	return /* @__PURE__ */ a("g", {
		class: "weight stack",
		children: [/* @__PURE__ */ a("rect", {
			x: left,
			y: at[1],
			width: wide,
			height: tall,
			rx: 2
		}), /* @__PURE__ */ a("path", {
			class: "plates",
			d: plates
		})]
	});
}
// src/parts/figure/ribbon.tsx
/** The load ribbon: full where it is sure, hatched where it is not, cut at the thirds. */
function RibbonShape({ laid, hatch, band }) {
	const r = laid.ribbon;
	const low = band ? r.low : r.force;
	const high = band ? r.high : r.force;
	return /* @__PURE__ */ a("g", {
		class: "ribbon",
		children: [
			runs(r.force).map((run) => {
				const path = edges(laid, run, () => 0);
				const inner = edges(laid, run, (k) => low[k]);
				const outer = edges(laid, run, (k) => high[k]);
				return /* @__PURE__ */ a("g", { children: [
					/* @__PURE__ */ a("path", {
						class: "sure",
						d: area(path, edges(laid, run, (k) => sure(low[k], high[k])))
					}),
					band && /* @__PURE__ */ a("path", {
						class: "unsure",
						fill: `url(#${hatch})`,
						d: area(inner, outer)
					}),
					/* @__PURE__ */ a("path", {
						class: "edge",
						d: polyline(edges(laid, run, (k) => r.force[k]))
					})
				] }, run[0]);
			}),
			/* @__PURE__ */ a(Cuts, {
				laid,
				high
			}),
			/* @__PURE__ */ a(Way, { laid })
		]
	});
}
/** Cuts parts the ribbon at the bounds of the thirds. */
function Cuts({ laid, high }) {
	const d = laid.ribbon.thirds.filter((k) => !Number.isNaN(high[k])).map((k) => segment(edge$1(laid, k, 0), edge$1(laid, k, high[k] + 5 / laid.perNewton))).join("");
	return /* @__PURE__ */ a($, { children: [/* @__PURE__ */ a("path", {
		class: "cut-gap",
		d
	}), /* @__PURE__ */ a("path", {
		class: "cut",
		d
	})] });
}
/** Way is the contact's path: a ring at its start, a head at its end, dots where there is no force. */
function Way({ laid }) {
	const all = laid.ribbon.base.map((_, k) => edge$1(laid, k, 0));
	const [start, end] = [all[0], all.at(-1)];
	if (!start || !end) return null;
	let back = all.length - 2;
	while (back > 0 && length(sub(end, all[back])) < 4) back--;
	const from = all[Math.max(0, back)];
	const tip = add(end, times(sub(end, from), 8 / Math.max(1, length(sub(end, from)))));
	return /* @__PURE__ */ a($, { children: [
		/* @__PURE__ */ a("path", {
			class: "gap",
			d: polyline(all)
		}),
		/* @__PURE__ */ a("path", {
			class: "way",
			d: runs(laid.ribbon.force).map(([a, b]) => polyline(all.slice(a, b))).join("")
		}),
		/* @__PURE__ */ a("path", {
			class: "way-head",
			d: head(from, tip, 12)
		}),
		/* @__PURE__ */ a("circle", {
			class: "way-start",
			cx: start[0],
			cy: start[1],
			r: 4.5
		})
	] });
}
/** Can is the outline of what the person can produce, and where the load comes nearest to it. */
function Can({ laid, sticking }) {
	const can = laid.ribbon.can;
	if (!can) return null;
	const most = mostCan * laid.full;
	const outline = runs(can).map((run) => polyline(edges({
		...laid,
		full: most
	}, run, (k) => Math.min(can[k], most)))).join("");
	const at = sticking === void 0 || Number.isNaN(laid.ribbon.force[sticking]) ? null : edge$1(laid, sticking, laid.ribbon.force[sticking]);
	return /* @__PURE__ */ a("g", {
		class: "can",
		children: [/* @__PURE__ */ a("path", {
			class: "outline",
			d: outline
		}), at && /* @__PURE__ */ a("path", {
			class: "sticking",
			d: polygon([
				[at[0], at[1] - 8],
				[at[0] + 8, at[1]],
				[at[0], at[1] + 8],
				[at[0] - 8, at[1]]
			])
		})]
	});
}
/** Here crosses the ribbon where the machine stands. */
function Here({ laid, position }) {
	const force = laid.ribbon.force[position];
	if (force === void 0 || Number.isNaN(force)) return null;
	const [a$9, b] = [edge$1(laid, position, 0), edge$1(laid, position, force)];
	return /* @__PURE__ */ a("g", {
		class: "here",
		children: [/* @__PURE__ */ a("path", { d: segment(a$9, b) }), /* @__PURE__ */ a("circle", {
			cx: b[0],
			cy: b[1],
			r: 3.5
		})]
	});
}
/** ThirdNames writes the names of the thirds into the ribbon, where all fit. */
function ThirdNames({ laid }) {
	const last = laid.ribbon.base.length - 1;
	const ends = [
		0,
		...laid.ribbon.thirds,
		last
	];
	const places = words.thirds.map((name, i) => {
		const [from, to] = [ends[i], ends[i + 1]];
		const k = from + to >> 1;
		const force = laid.ribbon.force[k];
		const [a, b] = [edge$1(laid, from, force / 2), edge$1(laid, to, force / 2)];
		const run = sub(b, a);
		const size = Math.min((length(run) - 8) / (name.length * .56), Math.abs(force) * laid.perNewton / 1.5);
		let turn = Math.atan2(run[1], run[0]) * 180 / Math.PI;
		if (Math.abs(turn) > 90) turn -= Math.sign(turn) * 180;
		return {
			name,
			at: edge$1(laid, k, force / 2),
			turn,
			size
		};
	});
	const size = Math.min(12, ...places.map((p) => p.size));
	if (!(size >= 8.5)) return null;
	return /* @__PURE__ */ a("g", {
		class: "third-names",
		"font-size": size,
		children: places.map((p) => /* @__PURE__ */ a("text", {
			transform: `translate(${p.at[0].toFixed(1)} ${p.at[1].toFixed(1)}) rotate(${p.turn.toFixed(1)})`,
			dy: "0.35em",
			children: p.name
		}, p.name))
	});
}
// src/parts/figure/shown.tsx
/** Axes rings the fixed pins about which arms are counted. */
function Axes({ stage }) {
	return /* @__PURE__ */ a("g", {
		class: "axes",
		children: [...new Map(stage.frame.arms.map((a) => [a.axis.join(" "), a.axis]))].map(([key, axis]) => {
			const at = onScreen(stage.view, axis);
			return /* @__PURE__ */ a("circle", {
				cx: at[0],
				cy: at[1],
				r: 15
			}, key);
		})
	});
}
/** Travels draws the ways of the loads and of the contact up to where the machine stands, with their lengths. */
function Travels({ stage, trail }) {
	const frames = trail.filter((f) => f.position <= stage.frame.position);
	const ways = stage.drawing.weights.filter((w) => w.load && w.mass > 0).map((w) => ({
		name: w.name,
		role: "load",
		places: frames.map((f) => moved(f.poses[w.on])(w.at))
	}));
	ways.push({
		name: words.figure.contact,
		role: "person",
		places: frames.map((f) => f.contact)
	});
	return /* @__PURE__ */ a("g", {
		class: "travels",
		children: ways.map((w) => {
			const places = w.places.map((p) => onScreen(stage.view, p));
			const end = places.at(-1);
			if (!end) return null;
			return /* @__PURE__ */ a("g", {
				class: w.role,
				children: [/* @__PURE__ */ a("path", { d: polyline(places) }), /* @__PURE__ */ a("text", {
					class: "halo",
					x: end[0] + 12,
					y: end[1] - 10,
					children: [
						w.name,
						" ",
						travel(stage.units, lengthOf(w.places))
					]
				})]
			}, w.name);
		})
	});
}
function lengthOf(places) {
	let sum = 0;
	for (let i = 1; i < places.length; i++) sum += distance(places[i - 1], places[i]);
	return sum;
}
/** Ghost draws links and loads faintly where they are at both ends of the travel. */
function Ghost({ stage, trail }) {
	return /* @__PURE__ */ a("g", {
		class: "ghost",
		children: [trail[0], trail.at(-1)].filter((f) => f !== void 0 && f.position !== stage.frame.position).map((frame) => /* @__PURE__ */ a("g", { children: [/* @__PURE__ */ a(Weights, { stage: {
			...stage,
			frame
		} }), /* @__PURE__ */ a(Links, { stage: {
			...stage,
			frame
		} })] }, frame.position))
	});
}
// src/parts/figure/figure.tsx
var contactOnly = /* @__PURE__ */ new Set(["contact"]);
var weightOnly = /* @__PURE__ */ new Set(["weight"]);
/** Figure is an SVG group; the svg element about it belongs to whoever shows it. */
function Figure({ stage, show, id, trail, body, sticking }) {
	const arms = /* @__PURE__ */ new Set();
	if (show.has("arms") || show.has("loadArm")) arms.add("load");
	if (show.has("arms") || show.has("contactArm")) arms.add("contact");
	if (show.has("rope")) arms.add("rope");
	return /* @__PURE__ */ a("g", {
		class: "figure",
		children: [
			/* @__PURE__ */ a("defs", { children: /* @__PURE__ */ a("pattern", {
				id,
				width: "6",
				height: "6",
				patternUnits: "userSpaceOnUse",
				patternTransform: "rotate(45)",
				children: /* @__PURE__ */ a("path", {
					class: "hatch",
					d: "M0 0V6"
				})
			}) }),
			show.has("gravity") && /* @__PURE__ */ a(Gravity, { stage }),
			show.has("ribbon") && /* @__PURE__ */ a(RibbonShape, {
				laid: stage.laid,
				hatch: id,
				band: show.has("band")
			}),
			body && /* @__PURE__ */ a(BodyShape, {
				stage,
				body: body.shape,
				stale: body.stale
			}),
			show.has("ribbon") && /* @__PURE__ */ a(Can, {
				laid: stage.laid,
				sticking
			}),
			show.has("ribbon") && /* @__PURE__ */ a(ThirdNames, { laid: stage.laid }),
			show.has("ghost") && trail && /* @__PURE__ */ a(Ghost, {
				stage,
				trail
			}),
			/* @__PURE__ */ a(Guides, { stage }),
			/* @__PURE__ */ a(Weights, { stage }),
			/* @__PURE__ */ a(Links, { stage }),
			/* @__PURE__ */ a(Wheels, { stage }),
			/* @__PURE__ */ a(Lines$1, { stage }),
			/* @__PURE__ */ a(Pins, { stage }),
			show.has("ribbon") && /* @__PURE__ */ a(Here, {
				laid: stage.laid,
				position: stage.frame.position
			}),
			show.has("axis") && /* @__PURE__ */ a(Axes, { stage }),
			show.has("travels") && trail && /* @__PURE__ */ a(Travels, {
				stage,
				trail
			}),
			/* @__PURE__ */ a(Arms, {
				stage,
				kinds: arms
			}),
			show.has("gravity") && /* @__PURE__ */ a(Forces, {
				stage,
				kinds: weightOnly
			}),
			show.has("forces") && /* @__PURE__ */ a(Forces, {
				stage,
				kinds: contactOnly
			}),
			/* @__PURE__ */ a(Contact, { stage }),
			show.has("names") && /* @__PURE__ */ a(Names, {
				stage,
				ribbonShown: show.has("ribbon")
			})
		]
	});
}
function Contact({ stage }) {
	const at = onScreen(stage.view, stage.frame.contact);
	return /* @__PURE__ */ a("g", {
		class: "contact",
		children: [/* @__PURE__ */ a("circle", {
			cx: at[0],
			cy: at[1],
			r: 7
		}), /* @__PURE__ */ a("circle", {
			class: "centre",
			cx: at[0],
			cy: at[1],
			r: 2.5
		})]
	});
}
/** Names says what the parts are and how large the force is here, at the start and at the end. */
function Names({ stage, ribbonShown }) {
	const { laid, drawing, frame, view } = stage;
	const labels = [];
	const here = laid.ribbon.force[frame.position];
	if (ribbonShown && here !== void 0 && !Number.isNaN(here)) labels.push({
		at: edge$1(laid, frame.position, here),
		text: force(stage.units, here),
		role: "load",
		bold: true
	});
	for (const w of drawing.weights) if (w.load && w.mass > 0) labels.push({
		at: screen(stage, w.on)(w.at),
		text: `${w.name} ${mass(stage.units, w.mass)}`,
		role: "load"
	});
	const axis = drawing.pins.find((p) => p.ground && frame.arms.some((a) => a.axis[0] === p.at[0] && a.axis[1] === p.at[1]));
	if (axis) labels.push({
		at: onScreen(view, axis.at),
		text: words.figure.axis,
		role: "ink"
	});
	labels.push({
		at: onScreen(view, frame.contact),
		text: words.figure.contact,
		role: "person"
	});
	return /* @__PURE__ */ a("g", {
		class: "names",
		children: place$1(labels, stage.size, avoided(stage, ribbonShown)).map((l) => /* @__PURE__ */ a("g", { children: [l.lead && /* @__PURE__ */ a("path", {
			class: "lead",
			d: `M${l.at[0]} ${l.at[1]}L${l.x > l.at[0] ? l.x : l.x + 8} ${l.y - 4}`
		}), /* @__PURE__ */ a("text", {
			class: `halo ${l.role}${l.bold ? " bold" : ""}`,
			x: l.x,
			y: l.y,
			children: l.text
		})] }, l.text))
	});
}
/** avoided lists places that labels keep off: links, the ribbon and the contact's path. */
function avoided(stage, ribbonShown) {
	const out = stage.drawing.links.flatMap((link, i) => {
		if (i === 0 || link.stack) return [];
		const at = screen(stage, i);
		return link.pieces.flatMap(([a, b]) => along(at(a), at(b)));
	});
	for (const a of stage.frame.arms) out.push(...along(onScreen(stage.view, a.axis), onScreen(stage.view, a.foot)));
	if (!ribbonShown) return out;
	const { laid } = stage;
	for (let k = 0; k < laid.ribbon.base.length; k += 3) {
		const f = laid.ribbon.force[k];
		out.push(...along(edge$1(laid, k, 0), edge$1(laid, k, Number.isNaN(f) ? 0 : f), 8));
	}
	return out;
}
// src/explain/show.ts
var layersOf = {
	machine: [],
	axis: ["axis"],
	gravity: ["gravity"],
	"load arm": ["loadArm"],
	"contact arm": ["contactArm", "forces"],
	rope: ["rope"],
	"cam radius": ["rope"],
	travels: ["travels"],
	ribbon: ["ribbon", "band"],
	curve: []
};
/** layersFor returns the layers of a step; names are left to steps that explain little else. */
function layersFor(step) {
	const out = new Set(step.show.flatMap((s) => layersOf[s] ?? []));
	if (!step.show.includes("travels")) out.add("names");
	return out;
}
// src/explain/view.tsx
/**
* The presentation of one stroke, step by step: figure, caption, and a slider
* to move the machine. It needs no server, so that it can travel in one file.
*/
var strokeTime = 2600;
var numbers$3 = (column) => column.map((f) => f ?? NaN);
/** stageFor lays the preview out in the size at one position of its curve. */
function stageFor(p, position, size, units) {
	if (!p.curve || !p.drawing || !p.frames.length) return null;
	const ribbon = ribbonOf(p.curve, "lifting", p.band);
	const full = ceiling(ribbon);
	const wide = .19 * Math.min(size.width, size.height);
	const view = fitWith({
		low: p.drawing.low,
		high: p.drawing.high
	}, ribbon, wide, full, size, 26);
	const laid = {
		ribbon,
		view,
		perNewton: wide / full,
		full
	};
	return {
		drawing: p.drawing,
		frame: frameAt(p.frames, position),
		laid,
		view,
		size,
		units
	};
}
var frameAt = (frames, position) => frames.reduce((best, f) => Math.abs(f.position - position) < Math.abs(best.position - position) ? f : best);
function ExplainView({ explanation, units }) {
	const { steps, preview } = explanation;
	const [now, setNow] = d$2({
		step: 0,
		position: steps[0]?.position ?? 0
	});
	const step = steps[now.step];
	const stop = useMovement(step, now.step, (position) => setNow((n) => ({
		...n,
		position
	})));
	if (!step || !preview.curve) return null;
	const to = (i) => setNow({
		step: i,
		position: steps[i].position
	});
	const move = (position) => {
		stop();
		setNow((n) => ({
			...n,
			position
		}));
	};
	return /* @__PURE__ */ a("div", {
		class: "explain-view",
		children: [
			/* @__PURE__ */ a(FigureBox, {
				preview,
				position: now.position,
				show: layersFor(step),
				units
			}),
			/* @__PURE__ */ a(Scrubber, {
				curve: preview.curve,
				position: now.position,
				move,
				units
			}),
			/* @__PURE__ */ a("div", {
				class: "explain-words",
				children: [/* @__PURE__ */ a(Caption, {
					step,
					at: now.step,
					of: steps.length,
					to
				}), step.show.includes("curve") && /* @__PURE__ */ a(CurveBox, {
					preview,
					position: now.position,
					move,
					units
				})]
			})
		]
	});
}
/**
* useMovement moves the machine from where the step begins to where it ends,
* once, unless motion is unwanted, and returns how to stop it.
*/
function useMovement(step, key, move) {
	const frame = T(0);
	const stop = () => cancelAnimationFrame(frame.current);
	A$1(() => {
		if (!step || step.until === step.position || matchMedia("(prefers-reduced-motion: reduce)").matches) return;
		const begun = performance.now();
		const next = (now) => {
			const t = Math.min(1, Math.max(0, (now - begun) / strokeTime));
			if (t < 1) frame.current = requestAnimationFrame(next);
			move(Math.round(step.position + (step.until - step.position) * t));
		};
		frame.current = requestAnimationFrame(next);
		return stop;
	}, [key, step]);
	return stop;
}
function FigureBox({ preview, position, show, units }) {
	const [ref, size] = useSize();
	const stage = size && size.height > 40 ? stageFor(preview, position, size, units) : null;
	return /* @__PURE__ */ a("div", {
		class: "explain-figure",
		ref,
		children: stage && /* @__PURE__ */ a("svg", {
			width: stage.size.width,
			height: stage.size.height,
			viewBox: `0 0 ${stage.size.width} ${stage.size.height}`,
			role: "img",
			"aria-label": preview.name,
			children: /* @__PURE__ */ a(Figure, {
				stage,
				show,
				id: "explain-unsure",
				trail: preview.frames,
				...stage.frame.body ? { body: {
					shape: stage.frame.body,
					stale: false
				} } : {}
			})
		})
	});
}
function Scrubber({ curve, position, move, units }) {
	const f = curve.lift[position];
	const share = percent((curve.travel[position] ?? 0) / (curve.travel.at(-1) || 1));
	const text = f === null || f === void 0 ? words.machine.gapHere : force(units, f);
	return /* @__PURE__ */ a("div", {
		class: "explain-scrub",
		children: [/* @__PURE__ */ a("input", {
			type: "range",
			min: "0",
			max: curve.travel.length - 1,
			value: position,
			"aria-label": words.machine.scrub,
			"aria-valuetext": `${share}, ${text}`,
			onInput: (e) => move(Number(e.currentTarget.value))
		}), /* @__PURE__ */ a("output", { children: text })]
	});
}
function Caption({ step, at: i, of, to }) {
	return /* @__PURE__ */ a("div", {
		class: "explain-caption",
		children: [/* @__PURE__ */ a("div", {
			"aria-live": "polite",
			children: [
				/* @__PURE__ */ a("p", {
					class: "faint small",
					children: words.explain.step(i + 1, of)
				}),
				/* @__PURE__ */ a("h2", { children: step.title }),
				/* @__PURE__ */ a("p", { children: step.caption })
			]
		}), /* @__PURE__ */ a("div", {
			class: "row",
			children: [/* @__PURE__ */ a("button", {
				type: "button",
				disabled: i === 0,
				onClick: () => to(i - 1),
				children: words.explain.previous
			}), /* @__PURE__ */ a("button", {
				type: "button",
				class: "strong",
				disabled: i === of - 1,
				onClick: () => to(i + 1),
				children: words.explain.next
			})]
		})]
	});
}
function CurveBox({ preview, position, move, units }) {
	const curve = preview.curve;
	const band = preview.band;
	return /* @__PURE__ */ a(Chart, {
		series: [{
			name: words.phases.lifting,
			look: "lift",
			x: curve.travel,
			y: numbers$3(curve.lift)
		}],
		band: band ? {
			low: numbers$3(band.low),
			high: numbers$3(band.high)
		} : null,
		cursor: {
			x: curve.travel[position] ?? 0,
			readings: [curve.lift[position] ?? null]
		},
		length: curve.travel.at(-1) ?? 0,
		most: 1.1 * ceiling(ribbonOf(curve, "lifting", band)),
		...axesOf(units),
		label: words.chart.label(preview.name),
		scrub: (share) => move(at$1(curve.travel, share))
	});
}
// src/parts/stepper.tsx
/** A number with a step down and a step up. */
function Stepper({ label, name, unit, value, low, high, step, change }) {
	const to = (v) => change(Math.min(high, Math.max(low, Math.round(v / step) * step)));
	const typed = (text) => {
		const v = Number(text.replace(",", "."));
		if (text.trim() !== "" && Number.isFinite(v)) change(Math.min(high, Math.max(low, v)));
	};
	return /* @__PURE__ */ a("div", {
		class: "stepper",
		children: [/* @__PURE__ */ a("span", {
			class: "stepper-name",
			children: name
		}), /* @__PURE__ */ a("div", {
			class: "stepper-row",
			children: [
				/* @__PURE__ */ a("button", {
					type: "button",
					class: "square",
					"aria-label": words.set.less(label),
					disabled: value <= low,
					onClick: () => to(value - step),
					children: "−"
				}),
				/* @__PURE__ */ a("input", {
					type: "text",
					inputMode: "decimal",
					"aria-label": label,
					value: String(Number(value.toFixed(4))),
					onChange: (e) => {
						typed(e.currentTarget.value);
						e.currentTarget.value = String(Number(value.toFixed(4)));
					}
				}),
				unit && /* @__PURE__ */ a("span", {
					class: "unit",
					children: unit
				}),
				/* @__PURE__ */ a("button", {
					type: "button",
					class: "square",
					"aria-label": words.set.more(label),
					disabled: value >= high,
					onClick: () => to(value + step),
					children: "+"
				})
			]
		})]
	});
}
// src/screens/build/fields.tsx
var show$1 = /* @__PURE__ */ new Set([
	"ribbon",
	"names",
	"forces",
	"band"
]);
function BuildPreview({ preview }) {
	const [ref, size] = useSize();
	const middle = preview?.curve ? at$1(preview.curve.travel, .5) : 0;
	const stage = preview && size && size.height > 40 ? stageFor(preview, middle, size, units.value) : null;
	return /* @__PURE__ */ a($, { children: [/* @__PURE__ */ a("div", {
		class: "build-preview",
		ref,
		children: stage && /* @__PURE__ */ a("svg", {
			width: stage.size.width,
			height: stage.size.height,
			role: "img",
			"aria-label": preview.name,
			children: /* @__PURE__ */ a(Figure, {
				stage,
				show: show$1,
				id: "build-unsure"
			})
		})
	}), preview?.words[0] && /* @__PURE__ */ a("p", {
		class: "verdict",
		children: preview.words[0]
	})] });
}
function NameField({ value, change }) {
	return /* @__PURE__ */ a("label", {
		class: "find",
		children: [/* @__PURE__ */ a("span", { children: words.build.name }), /* @__PURE__ */ a("input", {
			type: "text",
			maxLength: 120,
			value,
			onInput: (e) => change(e.currentTarget.value)
		})]
	});
}
function ValueFields({ asks, values, change }) {
	return /* @__PURE__ */ a($, { children: asks.map((v, i) => /* @__PURE__ */ a("div", {
		class: "tape-row",
		children: [/* @__PURE__ */ a(Stepper, {
			label: v.ask,
			name: v.ask,
			unit: v.unit,
			value: values[i].value,
			low: v.low,
			high: v.high,
			step: v.step,
			change: (value) => change(values.map((old, k) => k === i ? {
				...old,
				value
			} : old))
		}), /* @__PURE__ */ a("p", {
			class: "faint small",
			children: v.hint
		})]
	}, v.name)) });
}
// src/parts/pointers.ts
/** fingers listens on the element, whose own or whose parent's touch-action must be none, and returns how to stop. */
function fingers(element, touched) {
	const down = /* @__PURE__ */ new Map();
	let grip = null;
	const where = (e) => {
		const box = element.getBoundingClientRect();
		return [e.clientX - box.left, e.clientY - box.top];
	};
	const onDown = (e) => {
		if (e.button !== 0) return;
		element.setPointerCapture(e.pointerId);
		down.set(e.pointerId, where(e));
		if (down.size === 1) grip = touched().hold(where(e), e);
		else {
			grip?.cancel();
			grip = null;
		}
	};
	const onMove = (e) => {
		const before = down.get(e.pointerId);
		if (!before) return;
		const now = where(e);
		if (down.size === 2) {
			const still = [...down].find(([id]) => id !== e.pointerId)[1];
			touched().pinch([still, before], [still, now]);
		}
		down.set(e.pointerId, now);
		grip?.move(now, e);
	};
	const onUp = (e) => {
		if (!down.delete(e.pointerId)) return;
		if (e.type === "pointercancel") grip?.cancel();
		else grip?.end();
		grip = null;
	};
	const listeners = [
		["pointerdown", onDown],
		["pointermove", onMove],
		["pointerup", onUp],
		["pointercancel", onUp]
	];
	for (const [name, f] of listeners) element.addEventListener(name, f);
	return () => {
		for (const [name, f] of listeners) element.removeEventListener(name, f);
	};
}
// src/screens/machine/loupe.tsx
var radius = 52;
var power = 2;
var above = 96;
function Loupe({ at, size, of }) {
	const y = at[1] > 148 ? at[1] - above : at[1] + above;
	const x = Math.min(size.width - radius - 2, Math.max(54, at[0]));
	return /* @__PURE__ */ a("g", {
		class: "loupe",
		"aria-hidden": "true",
		children: [
			/* @__PURE__ */ a("clipPath", {
				id: "loupe-glass",
				children: /* @__PURE__ */ a("circle", {
					cx: x,
					cy: y,
					r: radius
				})
			}),
			/* @__PURE__ */ a("circle", {
				class: "glass",
				cx: x,
				cy: y,
				r: radius
			}),
			/* @__PURE__ */ a("g", {
				"clip-path": "url(#loupe-glass)",
				children: /* @__PURE__ */ a("use", {
					href: `#${of}`,
					transform: `translate(${x - power * at[0]} ${y - power * at[1]}) scale(${power})`
				})
			}),
			/* @__PURE__ */ a("path", {
				class: "cross",
				d: `M${x - 12} ${y}H${x - 3}M${x + 3} ${y}H${x + 12}M${x} ${y - 12}V${y - 3}M${x} ${y + 3}V${y + 12}`
			}),
			/* @__PURE__ */ a("circle", {
				class: "frame",
				cx: x,
				cy: y,
				r: radius
			})
		]
	});
}
// src/screens/build/photoboard.tsx
/** A photo to tap on: one finger places and moves marks under a loupe, two fingers come nearer. */
var fingertip$1 = 26;
var placing = 13;
/** up turns a pixel, whose second number goes down, into a place, whose second goes up, and back. */
var up = (p) => [p[0], -p[1]];
function PhotoBoard(props) {
	const [ref, size] = useSize();
	return /* @__PURE__ */ a("div", {
		class: "photo-board",
		ref,
		children: size && size.height > 40 && /* @__PURE__ */ a(Drawn$1, {
			...props,
			size
		})
	});
}
function Drawn$1({ photo, marks, join, rim, more, place, move, size }) {
	const svg = T(null);
	const camera = useSignal(null);
	const held = useSignal(null);
	const fitted = fit({
		low: [0, -photo.height],
		high: [photo.width, 0]
	}, size, 4);
	const view = camera.value ?? fitted;
	const touched = T(null);
	const clamp = (p) => [Math.min(photo.width, Math.max(0, p[0])), Math.min(photo.height, Math.max(0, -p[1]))];
	touched.current = {
		hold(at, e) {
			const near = marks.findIndex((m) => {
				const q = onScreen(view, up(m.at));
				return Math.hypot(q[0] - at[0], q[1] - at[1]) < (more ? placing : fingertip$1);
			});
			if (near < 0 && !more) return holdPaper$1(camera, view, at);
			const start = near >= 0 ? marks[near].at : clamp(onGround(view, at));
			const offset = near >= 0 ? [onScreen(view, up(start))[0] - at[0], onScreen(view, up(start))[1] - at[1]] : [0, 0];
			const touch = e.pointerType !== "mouse";
			let now = start;
			held.value = {
				at: now,
				touch
			};
			return {
				move(to) {
					now = clamp(onGround(view, [to[0] + offset[0], to[1] + offset[1]]));
					held.value = {
						at: now,
						touch
					};
					if (near >= 0) move(near, now);
				},
				end() {
					held.value = null;
					if (near < 0) place(now);
				},
				cancel() {
					held.value = null;
					if (near >= 0) move(near, start);
				}
			};
		},
		pinch(from, to) {
			camera.value = within(pinched(camera.value ?? view, from, to), fitted, to[0]);
		}
	};
	A$1(() => fingers(svg.current, () => touched.current), []);
	const corner = onScreen(view, [0, 0]);
	const shown = marks.map((m) => onScreen(view, up(m.at)));
	const joined = join === "line" ? polyline(shown) : join === "round" && shown.length > 2 ? polygon(shown) : "";
	const turn = (e) => {
		e.preventDefault();
		const box = svg.current.getBoundingClientRect();
		const at = [e.clientX - box.left, e.clientY - box.top];
		camera.value = within(zoomed(view, at, Math.exp(-e.deltaY * .0016)), fitted, at);
	};
	return /* @__PURE__ */ a($, { children: [
		/* @__PURE__ */ a("svg", {
			ref: svg,
			width: size.width,
			height: size.height,
			role: "group",
			"aria-label": words.build.tapNext,
			onWheel: turn,
			children: [/* @__PURE__ */ a("g", {
				id: "photo-figure",
				children: [
					/* @__PURE__ */ a("image", {
						href: addressOf("GET /api/photos/{id}", { id: photo.id }),
						x: corner[0],
						y: corner[1],
						width: photo.width * view.scale,
						height: photo.height * view.scale
					}),
					/* @__PURE__ */ a(Trace, { d: joined }),
					rim && /* @__PURE__ */ a(Trace, { d: polygon(rim.map((p) => onScreen(view, up(p)))) }),
					marks.map((m, i) => /* @__PURE__ */ a(PhotoMark, {
						mark: m,
						at: shown[i],
						nudge: (by) => move(i, clamp([m.at[0] + by[0], -m.at[1] - by[1]]))
					}, `${i} ${m.name}`)),
					held.value && /* @__PURE__ */ a("circle", {
						class: "photo-line",
						cx: onScreen(view, up(held.value.at))[0],
						cy: onScreen(view, up(held.value.at))[1],
						r: 9
					})
				]
			}), held.value?.touch && /* @__PURE__ */ a(Loupe, {
				at: onScreen(view, up(held.value.at)),
				size,
				of: "photo-figure"
			})]
		}),
		/* @__PURE__ */ a("p", {
			class: "photo-hint",
			children: words.build.nearerHint
		}),
		camera.value && /* @__PURE__ */ a("button", {
			type: "button",
			class: "fit",
			onClick: () => camera.value = null,
			children: words.machine.fit
		}),
		more && /* @__PURE__ */ a("button", {
			type: "button",
			class: "unseen-until-focus",
			onClick: () => place([photo.width / 2, photo.height / 2]),
			children: words.build.middle
		})
	] });
}
function Trace({ d }) {
	if (!d) return null;
	return /* @__PURE__ */ a($, { children: [/* @__PURE__ */ a("path", {
		class: "photo-line under",
		d
	}), /* @__PURE__ */ a("path", {
		class: "photo-line",
		d
	})] });
}
var ways$1 = {
	ArrowRight: [1, 0],
	ArrowLeft: [-1, 0],
	ArrowUp: [0, -1],
	ArrowDown: [0, 1]
};
function PhotoMark({ mark, at, nudge }) {
	const press = (e) => {
		const way = ways$1[e.key];
		if (!way) return;
		e.preventDefault();
		const far = e.shiftKey ? 10 : 1;
		nudge([way[0] * far, way[1] * far]);
	};
	return /* @__PURE__ */ a("g", {
		class: "photo-mark",
		tabindex: 0,
		role: "button",
		"aria-label": words.build.point(mark.name),
		onKeyDown: press,
		children: [
			/* @__PURE__ */ a("circle", {
				class: "reach",
				cx: at[0],
				cy: at[1],
				r: 22
			}),
			/* @__PURE__ */ a("circle", {
				class: "ring",
				cx: at[0],
				cy: at[1],
				r: 7
			}),
			/* @__PURE__ */ a("circle", {
				class: "dot",
				cx: at[0],
				cy: at[1],
				r: 7
			}),
			/* @__PURE__ */ a("text", {
				x: at[0] + 11,
				y: at[1] - 9,
				children: mark.name
			})
		]
	});
}
function holdPaper$1(camera, view, from) {
	const before = camera.value;
	return {
		move(at) {
			camera.value = panned(view, [at[0] - from[0], at[1] - from[1]]);
		},
		end() {},
		cancel() {
			camera.value = before;
		}
	};
}
// src/screens/build/scale.tsx
var kinds = Object.entries(words.build.scales).map(([value, name]) => ({
	value,
	name
}));
var hints = {
	plate: words.build.plateHint,
	line: words.build.lineHint,
	rectangle: words.build.rectangleHint
};
var sides = Object.entries(words.build.sides).map(([value, name]) => ({
	value,
	name
}));
function ScaleFields({ answers: a$8, change, ambiguous }) {
	const wanted = Math.max(0, scaleNeeds(a$8.scale)[0] - a$8.scaleTaps.length);
	return /* @__PURE__ */ a($, { children: [
		/* @__PURE__ */ a("h2", { children: words.build.steps.scale }),
		/* @__PURE__ */ a("p", { children: words.build.scaleLead }),
		/* @__PURE__ */ a(Choice, {
			label: words.build.steps.scale,
			hideLabel: true,
			options: kinds,
			value: a$8.scale,
			choose: (v) => change({
				scale: v,
				scaleTaps: []
			})
		}),
		/* @__PURE__ */ a("p", { children: hints[a$8.scale] }),
		a$8.scale === "plate" && /* @__PURE__ */ a(Length, {
			name: words.build.diameter,
			value: a$8.diameter,
			set: (diameter) => change({ diameter })
		}),
		a$8.scale === "line" && /* @__PURE__ */ a(Length, {
			name: words.build.lengthOf,
			value: a$8.length,
			set: (length) => change({ length })
		}),
		a$8.scale === "rectangle" && /* @__PURE__ */ a(Length, {
			name: words.build.width,
			value: a$8.width,
			set: (width) => change({ width })
		}),
		a$8.scale === "rectangle" && /* @__PURE__ */ a(Length, {
			name: words.build.height,
			value: a$8.height,
			set: (height) => change({ height })
		}),
		/* @__PURE__ */ a(Length, {
			name: words.build.plus,
			value: a$8.plus,
			set: (plus) => change({ plus })
		}),
		/* @__PURE__ */ a(Length, {
			name: words.build.nearer,
			value: a$8.nearer,
			set: (nearer) => change({ nearer })
		}),
		(ambiguous || a$8.near) && /* @__PURE__ */ a(Choice, {
			label: words.build.near,
			options: sides,
			value: a$8.near,
			choose: (v) => change({ near: v })
		}),
		/* @__PURE__ */ a("p", {
			class: "faint",
			role: "status",
			children: wanted ? words.build.tooFew(wanted) : ""
		}),
		/* @__PURE__ */ a("div", {
			class: "row",
			children: /* @__PURE__ */ a("button", {
				type: "button",
				disabled: !a$8.scaleTaps.length,
				onClick: () => change({ scaleTaps: a$8.scaleTaps.slice(0, -1) }),
				children: words.build.again
			})
		})
	] });
}
function Length({ name, value, set }) {
	const u = units.value.length;
	return /* @__PURE__ */ a(Stepper, {
		label: name,
		name,
		unit: u.unit,
		value: value / u.perUnit,
		low: 0,
		high: 5 / u.perUnit,
		step: units.value.imperial ? .125 : 1,
		change: (v) => set(v * u.perUnit)
	});
}
// src/screens/build/upload.ts
var longest = 2048;
/** upload stores the file as a photo. It throws a Trouble. */
async function upload(file) {
	return ask("POST /api/photos", { in: await small(file) });
}
async function small(file) {
	let image;
	try {
		image = await createImageBitmap(file, { imageOrientation: "from-image" });
	} catch {
		throw new Trouble({
			code: "unusable",
			message: words.build.notPhoto
		});
	}
	const shrink = Math.min(1, longest / Math.max(image.width, image.height));
	const canvas = document.createElement("canvas");
	canvas.width = Math.round(image.width * shrink);
	canvas.height = Math.round(image.height * shrink);
	const paper = canvas.getContext("2d");
	paper.imageSmoothingQuality = "high";
	paper.drawImage(image, 0, 0, canvas.width, canvas.height);
	image.close();
	const blob = await new Promise((done) => canvas.toBlob(done, "image/jpeg", .9));
	if (!blob) throw new Trouble({
		code: "unusable",
		message: words.build.notPhoto
	});
	return blob;
}
// src/screens/build/photo.tsx
/** Builds a machine from a photo: scale, plumb line, points, cam, numbers, look. */
function PhotoBuild({ family }) {
	const answers = useSignal(blank(family, `${words.build.usual}: ${family.name}`));
	const step = useSignal("scale");
	const surveyed = useSignal(null);
	const preview = useSignal(null);
	const trouble = useSignal(null);
	const busy = useSignal(false);
	const a$4 = answers.value;
	const change = (part) => answers.value = {
		...answers.value,
		...part
	};
	const steps = [
		"scale",
		"plumb",
		"points",
		...family.cam ? ["cam"] : [],
		"values",
		"done"
	];
	const guarded = async (work) => {
		busy.value = true;
		try {
			await work();
			trouble.value = null;
		} catch (err) {
			trouble.value = troubleOf(err);
		} finally {
			busy.value = false;
		}
	};
	const measure = async () => {
		surveyed.value = await ask("POST /api/survey", { in: surveyOf(answers.value) });
	};
	const look = async () => {
		await measure();
		const build = buildOf(family, answers.value, surveyed.value, words.build.measured);
		preview.value = await ask("POST /api/families/{id}", {
			path: { id: family.id },
			in: build
		});
		usable(preview.value);
	};
	const turn = (by) => guarded(async () => {
		const to = steps[steps.indexOf(step.value) + by];
		if (by > 0 && step.value === "scale") {
			await measure();
			if (surveyed.value?.ambiguous && !answers.value.near) return;
		}
		if (to === "done") await look();
		step.value = to;
	});
	const keep = () => guarded(async () => {
		const { photo } = answers.value;
		const survey = surveyOf(answers.value);
		await put$1(usable(preview.value), (id) => ask("PUT /api/sheets/{id}/backdrop", {
			path: { id },
			in: {
				photo: photo.id,
				survey
			}
		}));
	});
	const at = step.value;
	A$1(() => document.getElementById("content")?.scrollTo(0, 0), [at]);
	if (!a$4.photo) {
		const take = (file) => guarded(async () => {
			change({ photo: await upload(file) });
		});
		return /* @__PURE__ */ a(ChoosePhoto, {
			take,
			busy: busy.value,
			trouble: trouble.value
		});
	}
	return /* @__PURE__ */ a($, { children: [/* @__PURE__ */ a("ol", {
		class: "progress-steps",
		children: steps.map((s) => /* @__PURE__ */ a("li", {
			"aria-current": s === step.value ? "step" : void 0,
			children: words.build.steps[s]
		}, s))
	}), /* @__PURE__ */ a("div", {
		class: "build-grid",
		children: [step.value === "done" ? /* @__PURE__ */ a("div", { children: /* @__PURE__ */ a(BuildPreview, { preview: preview.value }) }) : /* @__PURE__ */ a(PhotoBoard, {
			photo: a$4.photo,
			...boardFor(step.value, family, a$4, change),
			...step.value === "scale" && surveyed.value?.rim.length ? { rim: surveyed.value.rim } : {}
		}), /* @__PURE__ */ a("div", {
			class: "guide",
			children: [
				/* @__PURE__ */ a(Guide, {
					step: step.value,
					family,
					answers: a$4,
					change,
					surveyed: surveyed.value
				}),
				trouble.value && /* @__PURE__ */ a(TroubleNote, { problem: trouble.value }),
				/* @__PURE__ */ a("div", {
					class: "row",
					children: [step.value !== "scale" && /* @__PURE__ */ a("button", {
						type: "button",
						disabled: busy.value,
						onClick: () => void turn(-1),
						children: words.build.previous
					}), step.value === "done" ? /* @__PURE__ */ a("button", {
						type: "button",
						class: "strong",
						disabled: busy.value || !preview.value?.curve,
						onClick: () => void keep(),
						children: words.build.put
					}) : /* @__PURE__ */ a("button", {
						type: "button",
						class: "strong",
						disabled: busy.value || missing(step.value, family, a$4) > 0,
						onClick: () => void turn(1),
						children: step.value === "plumb" && !a$4.plumb.length ? words.build.skip : words.build.next
					})]
				})
			]
		})]
	})] });
}
function ChoosePhoto({ take, busy, trouble }) {
	const input = T(null);
	return /* @__PURE__ */ a("div", {
		class: "empty",
		children: [
			/* @__PURE__ */ a("p", { children: words.build.photoHint }),
			trouble && /* @__PURE__ */ a(TroubleNote, { problem: trouble }),
			/* @__PURE__ */ a("button", {
				type: "button",
				class: "strong",
				disabled: busy,
				onClick: () => input.current?.click(),
				children: busy ? words.build.reading : words.build.choosePhoto
			}),
			/* @__PURE__ */ a("input", {
				ref: input,
				class: "unseen",
				type: "file",
				accept: "image/jpeg,image/png,image/*",
				tabIndex: -1,
				"aria-label": words.build.choosePhoto,
				onChange: (e) => {
					const file = e.currentTarget.files?.[0];
					e.currentTarget.value = "";
					if (file) take(file);
				}
			})
		]
	});
}
/** missing returns how many taps the step still needs. */
function missing(step, family, a) {
	switch (step) {
		case "scale": return Math.max(0, scaleNeeds(a.scale)[0] - a.scaleTaps.length);
		case "plumb": return a.plumb.length === 1 ? 1 : 0;
		case "points": return family.points.filter((p, i) => !p.optional && !a.points[i]).length;
		case "cam": return a.cam.length ? Math.max(0, (family.cam?.least ?? 0) - a.cam.length) : 0;
	}
	return 0;
}
/** listed lets taps fill and move a plain list. */
function listed(taps, most, name, set) {
	return {
		marks: taps.map((at, i) => ({
			at,
			name: name(i)
		})),
		more: taps.length < most,
		place: (at) => set([...taps, at]),
		move: (i, at) => set(taps.map((old, k) => k === i ? at : old))
	};
}
var mostCam = 60;
/** boardFor returns what taps on the photo mean in the step. */
function boardFor(step, family, a, change) {
	const number = (i) => String(i + 1);
	switch (step) {
		case "scale": {
			const join = a.scale === "line" ? "line" : "round";
			return {
				...listed(a.scaleTaps, scaleNeeds(a.scale)[1], number, (scaleTaps) => change({ scaleTaps })),
				join
			};
		}
		case "plumb": return {
			...listed(a.plumb, 2, number, (plumb) => change({ plumb })),
			join: "line"
		};
		case "cam": return {
			...listed(a.cam, mostCam, number, (cam) => change({ cam })),
			join: "round"
		};
	}
	const tapped = a.points.flatMap((at, i) => at ? [{
		i,
		at,
		name: family.points[i].name
	}] : []);
	const next = a.points.indexOf(null);
	const set = (i, at) => change({ points: a.points.map((old, k) => k === i ? at : old) });
	return {
		marks: tapped,
		more: step === "points" && next >= 0,
		place: (at) => set(next, at),
		move: (k, at) => set(tapped[k].i, at)
	};
}
function Guide({ step, family, answers: a$5, change, surveyed }) {
	switch (step) {
		case "scale": return /* @__PURE__ */ a(ScaleFields, {
			answers: a$5,
			change,
			ambiguous: surveyed?.ambiguous ?? false
		});
		case "plumb": return /* @__PURE__ */ a($, { children: [
			/* @__PURE__ */ a("h2", { children: words.build.steps.plumb }),
			/* @__PURE__ */ a("p", { children: words.build.plumbHint }),
			/* @__PURE__ */ a("label", {
				class: "check",
				children: [/* @__PURE__ */ a("input", {
					type: "checkbox",
					checked: a$5.mirror,
					onChange: () => change({ mirror: !a$5.mirror })
				}), words.build.mirror]
			}),
			/* @__PURE__ */ a(TakeBack, {
				count: a$5.plumb.length,
				back: () => change({ plumb: a$5.plumb.slice(0, -1) })
			}),
			/* @__PURE__ */ a("ul", { children: surveyed?.words.map((w) => /* @__PURE__ */ a("li", { children: w }, w)) })
		] });
		case "points": return /* @__PURE__ */ a(PointQuestions, {
			family,
			answers: a$5,
			change
		});
		case "cam": return /* @__PURE__ */ a($, { children: [
			/* @__PURE__ */ a("h2", { children: family.cam.ask }),
			/* @__PURE__ */ a("p", { children: family.cam.hint }),
			/* @__PURE__ */ a("p", {
				class: "faint",
				children: words.build.camHint(family.cam.least)
			}),
			/* @__PURE__ */ a("p", {
				role: "status",
				children: words.build.camCount(a$5.cam.length)
			}),
			/* @__PURE__ */ a(TakeBack, {
				count: a$5.cam.length,
				back: () => change({ cam: a$5.cam.slice(0, -1) })
			})
		] });
		case "values": return /* @__PURE__ */ a($, { children: [/* @__PURE__ */ a(NameField, {
			value: a$5.name,
			change: (name) => change({ name })
		}), /* @__PURE__ */ a(ValueFields, {
			asks: family.values,
			values: a$5.values,
			change: (values) => change({ values })
		})] });
		case "done": return /* @__PURE__ */ a(Errors, {
			family,
			answers: a$5,
			surveyed
		});
	}
}
function TakeBack({ count, back }) {
	return /* @__PURE__ */ a("div", {
		class: "row",
		children: /* @__PURE__ */ a("button", {
			type: "button",
			disabled: !count,
			onClick: back,
			children: words.build.again
		})
	});
}
function PointQuestions({ family, answers: a$6, change }) {
	const next = a$6.points.indexOf(null);
	const asked = next >= 0 ? family.points[next] : void 0;
	const last = a$6.points.map((p) => p !== null).lastIndexOf(true);
	return /* @__PURE__ */ a($, { children: [
		asked && /* @__PURE__ */ a("div", {
			role: "status",
			children: [/* @__PURE__ */ a("h2", { children: asked.ask }), /* @__PURE__ */ a("p", { children: [
				asked.hint,
				" ",
				asked.optional && /* @__PURE__ */ a("span", {
					class: "faint",
					children: [
						"(",
						words.build.optional,
						")"
					]
				})
			] })]
		}),
		/* @__PURE__ */ a("ul", {
			class: "asked",
			children: family.points.map((p, i) => /* @__PURE__ */ a("li", { children: [/* @__PURE__ */ a("span", { children: p.name }), /* @__PURE__ */ a("span", {
				class: "faint",
				children: a$6.points[i] ? "✓" : i === next ? words.build.tapNext : ""
			})] }, p.name))
		}),
		/* @__PURE__ */ a(TakeBack, {
			count: last + 1,
			back: () => change({ points: a$6.points.map((p, i) => i === last ? null : p) })
		})
	] });
}
/** Errors tells how far each measured point may be off. */
function Errors({ family, answers: a$7, surveyed }) {
	let k = 0;
	const rows = family.points.flatMap((p, i) => {
		const place = a$7.points[i] ? surveyed?.places[k++] : void 0;
		return place ? [{
			name: p.name,
			plus: Math.max(...place.plus)
		}] : [];
	});
	return /* @__PURE__ */ a($, { children: [
		/* @__PURE__ */ a("h2", { children: words.build.steps.done }),
		/* @__PURE__ */ a("ul", {
			class: "asked",
			children: rows.map((r) => /* @__PURE__ */ a("li", { children: [/* @__PURE__ */ a("span", { children: r.name }), /* @__PURE__ */ a("span", { children: words.build.error(lengthText(units.value, r.plus)) })] }, r.name))
		}),
		/* @__PURE__ */ a("ul", { children: surveyed?.words.map((w) => /* @__PURE__ */ a("li", { children: w }, w)) })
	] });
}
// src/server/latest.ts
/**
* Latest asks one question at a time. While an answer is awaited only the
* newest further question is kept; what was asked before it is never sent. An
* answer that comes after forget is dropped.
*/
var Latest = class {
	send;
	take;
	fail;
	#number = 0;
	#busy = false;
	#waiting = null;
	constructor(send, take, fail) {
		this.send = send;
		this.take = take;
		this.fail = fail;
	}
	/** ask sends the question, or keeps it until the answer to the one before is there. */
	ask(question) {
		if (this.#busy) {
			this.#waiting = { question };
			return;
		}
		this.#run(question);
	}
	/** forget drops whatever is on its way. */
	forget() {
		this.#number++;
		this.#waiting = null;
	}
	async #run(question) {
		const number = this.#number;
		this.#busy = true;
		try {
			const answer = await this.send(question);
			if (number === this.#number) this.take(answer, question);
		} catch (err) {
			if (number === this.#number) this.fail(err, question);
		} finally {
			this.#busy = false;
			const next = this.#waiting;
			this.#waiting = null;
			if (next) this.#run(next.question);
		}
	}
};
// src/screens/build/tape.tsx
/** Builds a machine by typing what the tape says; the picture follows. */
var tapePlus = .003;
var usual = (p) => ({
	name: p.name,
	at: p.usual,
	plus: [tapePlus, tapePlus]
});
function TapeBuild({ family }) {
	const build = useSignal({
		name: `${words.build.usual}: ${family.name}`,
		points: family.points.filter((p) => !p.optional).map(usual),
		values: family.values.map((v) => ({
			name: v.name,
			value: v.usual,
			plus: 0
		})),
		look: {}
	});
	const preview = useSignal(null);
	const trouble = useSignal(null);
	const latest = w$2(() => new Latest((b) => ask("POST /api/families/{id}", {
		path: { id: family.id },
		in: b
	}), (p) => {
		preview.value = p;
		trouble.value = null;
	}, (err) => trouble.value = troubleOf(err)), [family.id]);
	const asked = build.value;
	A$1(() => latest.ask({
		...asked,
		look: {
			frames: "all",
			imperial: pounds.value
		}
	}), [asked, pounds.value]);
	A$1(() => () => latest.forget(), []);
	const keep = async () => {
		try {
			if (preview.value) await put$1(usable(preview.value));
		} catch (err) {
			trouble.value = troubleOf(err);
		}
	};
	return /* @__PURE__ */ a("div", {
		class: "build-grid",
		children: [/* @__PURE__ */ a("div", {
			class: "build-shown",
			children: [
				/* @__PURE__ */ a(BuildPreview, { preview: preview.value }),
				trouble.value && /* @__PURE__ */ a(TroubleNote, { problem: trouble.value }),
				preview.value && /* @__PURE__ */ a(ProblemList, { problems: preview.value.problems })
			]
		}), /* @__PURE__ */ a("div", {
			class: "guide",
			children: [
				/* @__PURE__ */ a(NameField, {
					value: asked.name,
					change: (name) => build.value = {
						...build.value,
						name
					}
				}),
				/* @__PURE__ */ a("p", {
					class: "faint",
					children: words.build.usualHint
				}),
				family.points.map((p) => /* @__PURE__ */ a(PointRow, {
					ask: p,
					at: asked.points.find((q) => q.name === p.name)?.at ?? null,
					change: (at) => {
						const others = build.value.points.filter((q) => q.name !== p.name);
						build.value = {
							...build.value,
							points: at ? [...others, {
								...usual(p),
								at
							}] : others
						};
					}
				}, p.name)),
				/* @__PURE__ */ a(ValueFields, {
					asks: family.values,
					values: asked.values,
					change: (values) => build.value = {
						...build.value,
						values
					}
				}),
				/* @__PURE__ */ a("button", {
					type: "button",
					class: "strong",
					disabled: !preview.value?.curve,
					onClick: () => void keep(),
					children: words.build.put
				})
			]
		})]
	});
}
function PointRow({ ask: p, at, change }) {
	const u = units.value.length;
	const step = units.value.imperial ? .25 : 5;
	const field = (at, axis, name) => /* @__PURE__ */ a(Stepper, {
		label: `${p.name}, ${name}`,
		name,
		unit: u.unit,
		value: at[axis] / u.perUnit,
		low: -5 / u.perUnit,
		high: 5 / u.perUnit,
		step,
		change: (v) => change(axis === 0 ? [v * u.perUnit, at[1]] : [at[0], v * u.perUnit])
	});
	return /* @__PURE__ */ a("div", {
		class: "tape-row",
		children: [
			/* @__PURE__ */ a("p", { children: [
				/* @__PURE__ */ a("strong", { children: p.ask }),
				" ",
				/* @__PURE__ */ a("span", {
					class: "faint small",
					children: p.hint
				})
			] }),
			p.optional && /* @__PURE__ */ a("label", {
				class: "check whole",
				children: [/* @__PURE__ */ a("input", {
					type: "checkbox",
					checked: at !== null,
					onChange: () => change(at ? null : p.usual)
				}), words.build.known]
			}),
			at && field(at, 0, words.build.forward),
			at && field(at, 1, words.build.up)
		]
	});
}
// src/screens/build/build.tsx
/** A new machine: what it is like, how it is measured, and the answers. */
var families = y$1(null);
var trouble = y$1(null);
var how = y$1("photo");
function BuildScreen({ family: id }) {
	A$1(() => {
		ask("GET /api/families").then((f) => families.value = f).catch((err) => trouble.value = troubleOf(err));
	}, []);
	const family = families.value?.families.find((f) => f.id === id);
	return /* @__PURE__ */ a("div", {
		class: "build-screen",
		children: [
			/* @__PURE__ */ a("div", {
				class: "screen-head",
				children: [id && /* @__PURE__ */ a(BackLink, {
					to: {
						screen: "build",
						family: ""
					},
					label: words.build.previous
				}), /* @__PURE__ */ a("h1", { children: family ? family.name : words.build.title })]
			}),
			trouble.value && /* @__PURE__ */ a(TroubleNote, { problem: trouble.value }),
			!families.value && !trouble.value && /* @__PURE__ */ a("p", {
				class: "faint",
				children: words.loading
			}),
			families.value && !family && /* @__PURE__ */ a(Choose, { families: families.value.families }),
			family && /* @__PURE__ */ a(Measure, { family }, family.id)
		]
	});
}
function Choose({ families: all }) {
	const empty = async () => {
		try {
			await put$1(await (await ask("GET /api/example/{kind}", { path: { kind: "machine" } })).text());
		} catch (err) {
			trouble.value = troubleOf(err);
		}
	};
	return /* @__PURE__ */ a($, { children: [
		/* @__PURE__ */ a("p", {
			class: "lead",
			children: words.build.lead
		}),
		/* @__PURE__ */ a("ul", {
			class: "families",
			children: all.map((f) => /* @__PURE__ */ a("li", { children: /* @__PURE__ */ a("a", {
				href: write({
					screen: "build",
					family: f.id
				}),
				children: [/* @__PURE__ */ a("strong", { children: f.name }), /* @__PURE__ */ a("span", {
					class: "faint",
					children: f.about
				})]
			}) }, f.id))
		}),
		/* @__PURE__ */ a("button", {
			type: "button",
			onClick: () => void empty(),
			children: words.build.empty
		})
	] });
}
function Measure({ family }) {
	return /* @__PURE__ */ a($, { children: [/* @__PURE__ */ a(Choice, {
		label: words.build.how,
		options: [{
			value: "photo",
			name: words.build.photo
		}, {
			value: "tape",
			name: words.build.tape
		}],
		value: how.value,
		choose: (v) => how.value = v
	}), how.value === "photo" ? /* @__PURE__ */ a(PhotoBuild, { family }) : /* @__PURE__ */ a(TapeBuild, { family })] });
}
/** put stores a sheet, with the photo behind it if there is one, and leads to it. */
async function put$1(text, backdrop) {
	const saved = await ask("POST /api/sheets", { in: { text } });
	if (backdrop) await backdrop(saved.sheet.id);
	go({
		screen: "machine",
		id: saved.sheet.id
	});
}
/** usable returns the sheet of a preview, or throws what is wrong with it. */
function usable(p) {
	if (p.problems.length) throw new Error(p.problems.map((x) => x.message).join(" "));
	return p.text;
}
// src/state/room.ts
/** The board: everything stored. */
var room = y$1(null);
var roomTrouble = y$1(null);
async function keeping(answer) {
	try {
		room.value = await answer;
		roomTrouble.value = null;
		return true;
	} catch (err) {
		roomTrouble.value = troubleOf(err);
		return false;
	}
}
/** refresh reads the board anew. */
var refresh = (person = "") => keeping(ask("GET /api/room", person ? { query: { person } } : {}));
/** furnish brings the demo room back, or takes it away. */
var furnish = (present) => keeping(ask("POST /api/demo", { in: { present } }));
/** remove takes a sheet off the board; it can be brought back. */
var remove = (id, revision) => keeping(ask("DELETE /api/sheets/{id}", {
	path: { id },
	query: { revision: String(revision) }
}));
/** recover brings a removed sheet back. */
async function recover(id) {
	try {
		await ask("POST /api/sheets/{id}/recover", { path: { id } });
		await refresh();
	} catch (err) {
		roomTrouble.value = troubleOf(err);
	}
}
/** take reads an archive into the room. */
var take = (archive) => keeping(ask("POST /api/import", { in: archive.type ? archive : new Blob([archive], { type: "application/zip" }) }));
// src/state/trainee.ts
/** Whose body is put on the machines: the person chosen in this browser. */
var chosen = kept("person", "");
/** trainee is the id of the person's sheet; "" for nobody, also if the sheet is gone. */
var trainee = O(() => {
	const people = room.value?.people;
	return !people || people.some((p) => p.id === chosen.value) ? chosen.value : "";
});
function put(id) {
	chosen.value = id;
}
/** who returns the part of a request that names the person. */
var who = () => trainee.value ? { person: trainee.value } : {};
// src/parts/personpicker.tsx
/** Puts a person on the machine, or takes them off. */
function PersonPicker() {
	A$1(() => {
		if (!room.value) refresh();
	}, []);
	const people = room.value?.people ?? [];
	if (!people.length) return null;
	return /* @__PURE__ */ a("label", {
		class: "person-picker",
		children: [/* @__PURE__ */ a("span", { children: words.person.label }), /* @__PURE__ */ a("select", {
			value: trainee.value,
			onChange: (e) => put(e.currentTarget.value),
			children: [/* @__PURE__ */ a("option", {
				value: "",
				children: words.person.nobody
			}), people.map((p) => /* @__PURE__ */ a("option", {
				value: p.id,
				children: p.name
			}, p.id))]
		})]
	});
}
// src/state/settings.ts
/** How each machine was last set in this browser. */
var all = kept("settings", {});
var none = [];
/** settingsOf returns the settings of a machine that differ from its defaults. */
var settingsOf = (id) => O(() => all.value[id] ?? none);
/** remember keeps them. */
function remember(id, choices) {
	const { [id]: _, ...others } = all.value;
	const rest = Object.entries(others).slice(-60);
	all.value = Object.fromEntries(choices.length ? [...rest, [id, choices]] : rest);
}
// src/screens/compare.tsx
/** Up to six machines or settings as curves on one axis, and how they differ. */
var most$2 = 6;
var items = y$1([]);
var over = y$1("share");
var phase = y$1("lifting");
var ownPeak = y$1(false);
var shown = y$1("force");
var place = y$1(.5);
var numbers$2 = (column) => column.map((f) => f ?? NaN);
function CompareScreen({ ids }) {
	const comparison = useSignal(null);
	const trouble = useSignal(null);
	A$1(() => {
		if (!room.value) refresh();
		const known = items.value;
		if (ids.length) items.value = ids.map((id, i) => known[i]?.id === id ? known[i] : {
			id,
			settings: settingsOf(id).value
		});
	}, [ids.join(" ")]);
	const now = items.value;
	A$1(() => {
		if (!now.length) {
			comparison.value = null;
			return;
		}
		let current = true;
		ask("POST /api/compare", { in: {
			items: now.map((i) => ({
				sheet: i.id,
				settings: i.settings
			})),
			phase: phase.value,
			imperial: pounds.value,
			...who()
		} }).then((c) => {
			if (!current) return;
			comparison.value = c;
			trouble.value = null;
		}).catch((err) => {
			if (current) trouble.value = troubleOf(err);
		});
		return () => {
			current = false;
		};
	}, [
		now,
		phase.value,
		pounds.value,
		trainee.value
	]);
	const change = (next) => {
		items.value = next;
		correct({
			screen: "compare",
			ids: next.map((i) => i.id)
		});
	};
	const c = comparison.value;
	return /* @__PURE__ */ a("div", {
		class: "compare-screen",
		children: [
			/* @__PURE__ */ a("h1", { children: words.compare.title }),
			/* @__PURE__ */ a("p", {
				class: "lead",
				children: now.length ? words.compare.lead : words.compare.empty
			}),
			trouble.value && /* @__PURE__ */ a(TroubleNote, { problem: trouble.value }),
			c && now.length > 0 && /* @__PURE__ */ a(Picture, { comparison: c }),
			/* @__PURE__ */ a("ul", {
				class: "compared",
				children: now.map((item, i) => /* @__PURE__ */ a(OneItem, {
					item,
					label: c?.items[i]?.label ?? "",
					trouble: c?.items[i]?.trouble ?? "",
					i,
					set: (settings) => change(now.map((other, k) => k === i ? {
						...other,
						settings
					} : other)),
					drop: () => change(now.filter((_, k) => k !== i))
				}, `${i} ${item.id}`))
			}),
			now.length < most$2 && /* @__PURE__ */ a(Add$1, { add: (id) => change([...now, {
				id,
				settings: []
			}]) }),
			c && c.words.length > 0 && /* @__PURE__ */ a(Differences, { comparison: c })
		]
	});
}
function quantity(c) {
	const u = units.value;
	const percentAxis = (title) => ({
		perUnit: .01,
		unit: "%",
		title
	});
	if (trainee.value && shown.value === "effort") return {
		column: (i) => i.effort,
		axis: percentAxis(words.person.effortAxis),
		byShare: true
	};
	if (trainee.value && jointsOf(c).includes(shown.value)) {
		const joint = shown.value;
		const column = (i) => i.joints.find((j) => j.joint === joint)?.moment ?? [];
		return {
			column,
			axis: {
				perUnit: 1,
				unit: "N·m",
				title: `${words.compare.moment(joint)} (N·m)`
			},
			byShare: true
		};
	}
	const byShare = over.value === "share";
	const own = (i) => byShare ? i.byShare : i.byTravel;
	if (!ownPeak.value) return {
		column: own,
		axis: {
			...u.force,
			title: u.force.unit
		},
		byShare
	};
	const scaled = (i) => own(i).map((y) => y === null ? null : y / (i.readings?.peak.force || 1));
	return {
		column: scaled,
		axis: percentAxis(words.compare.axisNormal),
		byShare
	};
}
/** jointsOf lists the joint axes at which any of the machines asks for a moment. */
var jointsOf = (c) => [...new Set(c.items.flatMap((i) => i.joints.map((j) => j.joint)))];
function Picture({ comparison: c }) {
	const u = units.value;
	const q = quantity(c);
	const xs = q.byShare ? c.share : c.travel;
	const series = c.items.flatMap((item, i) => {
		const ys = numbers$2(q.column(item));
		return ys.some((y) => !Number.isNaN(y)) ? [{
			name: item.label,
			look: `series-${i + 1}`,
			x: xs,
			y: ys
		}] : [];
	});
	const at = Math.round(place.value * (xs.length - 1));
	const readings = series.map((s) => Number.isNaN(s.y[at]) ? null : s.y[at] ?? null);
	const sizes = series.map((s) => s.y.filter((y) => !Number.isNaN(y)).sort((a, b) => Math.abs(a) - Math.abs(b)));
	const most = 1.3 * Math.max(...sizes.map((l) => Math.min(Math.abs(l.at(-1)), 3 * Math.abs(l[Math.floor(.9 * (l.length - 1))]))), 1e-9);
	return /* @__PURE__ */ a($, { children: [series.length > 0 && /* @__PURE__ */ a($, { children: [
		/* @__PURE__ */ a(Chart, {
			series,
			band: null,
			cursor: {
				x: xs[at] ?? 0,
				readings
			},
			length: xs.at(-1) ?? 1,
			most,
			x: q.byShare ? {
				perUnit: .01,
				unit: "%",
				title: words.compare.axisShare
			} : axesOf(u).x,
			y: q.axis,
			label: words.compare.title,
			scrub: (share) => {
				place.value = share;
			}
		}),
		/* @__PURE__ */ a("input", {
			type: "range",
			min: "0",
			max: "100",
			value: Math.round(place.value * 100),
			"aria-label": words.machine.scrub,
			onInput: (e) => {
				place.value = Number(e.currentTarget.value) / 100;
			}
		}),
		/* @__PURE__ */ a(Legend, { entries: series.map((s, i) => ({
			name: s.name,
			look: s.look,
			reading: readings[i] === null ? "–" : `${fixed(readings[i] / q.axis.perUnit, 0)} ${q.axis.unit}`
		})) })
	] }), /* @__PURE__ */ a(Tools, { comparison: c })] });
}
function Tools({ comparison: c }) {
	const measures = [
		{
			value: "force",
			name: words.compare.force
		},
		{
			value: "effort",
			name: words.compare.effort
		},
		...jointsOf(c).map((j) => ({
			value: j,
			name: words.compare.moment(j)
		}))
	];
	return /* @__PURE__ */ a("div", {
		class: "compare-tools",
		children: [
			/* @__PURE__ */ a(PersonPicker, {}),
			trainee.value && /* @__PURE__ */ a("label", {
				class: "compared-setting",
				children: [/* @__PURE__ */ a("span", { children: words.compare.measure }), /* @__PURE__ */ a("select", {
					value: shown.value,
					onChange: (e) => {
						shown.value = e.currentTarget.value;
					},
					children: measures.map((m) => /* @__PURE__ */ a("option", {
						value: m.value,
						children: m.name
					}, m.value))
				})]
			}),
			/* @__PURE__ */ a(Choice, {
				label: words.compare.over,
				options: [{
					value: "share",
					name: words.compare.share
				}, {
					value: "travel",
					name: words.compare.travel
				}],
				value: over.value,
				choose: (v) => {
					over.value = v;
				}
			}),
			/* @__PURE__ */ a(Choice, {
				label: words.compare.phase,
				options: [{
					value: "lifting",
					name: words.phases.lifting
				}, {
					value: "lowering",
					name: words.phases.lowering
				}],
				value: phase.value,
				choose: (v) => {
					phase.value = v;
				}
			}),
			/* @__PURE__ */ a("label", {
				class: "check",
				children: [/* @__PURE__ */ a("input", {
					type: "checkbox",
					checked: ownPeak.value,
					onChange: () => {
						ownPeak.value = !ownPeak.value;
					}
				}), words.compare.normal]
			})
		]
	});
}
function OneItem({ item, label, trouble, i, set, drop }) {
	const settings = useSignal(null);
	const name = label || room.value?.machines.find((m) => m.id === item.id)?.name || item.id;
	const open = async () => {
		if (settings.value) return;
		try {
			const p = await ask("POST /api/preview", { in: {
				sheet: item.id,
				look: {
					structure: true,
					positions: 11,
					noBand: true
				}
			} });
			settings.value = p.structure?.settings ?? [];
		} catch {
			settings.value = [];
		}
	};
	return /* @__PURE__ */ a("li", { children: [
		/* @__PURE__ */ a("div", {
			class: "compared-head",
			children: [
				/* @__PURE__ */ a("svg", {
					class: "swatch",
					width: "34",
					height: "12",
					"aria-hidden": "true",
					children: /* @__PURE__ */ a("path", {
						class: `curve series-${i + 1}`,
						d: "M1 6H33"
					})
				}),
				/* @__PURE__ */ a("strong", { children: name }),
				/* @__PURE__ */ a("button", {
					type: "button",
					class: "icon",
					"aria-label": words.compare.remove(name),
					onClick: drop,
					children: "×"
				})
			]
		}),
		trouble && /* @__PURE__ */ a("p", {
			class: "warn-text",
			children: trouble
		}),
		/* @__PURE__ */ a("details", {
			onToggle: () => void open(),
			children: [
				/* @__PURE__ */ a("summary", { children: words.machine.tabs.set }),
				settings.value?.length === 0 && /* @__PURE__ */ a("p", {
					class: "faint",
					children: words.set.none
				}),
				settings.value?.map((s) => /* @__PURE__ */ a("label", {
					class: "compared-setting",
					children: [/* @__PURE__ */ a("span", { children: s.name }), /* @__PURE__ */ a("select", {
						value: item.settings.find((c) => c.setting === s.name)?.value ?? s.default,
						onChange: (e) => {
							const value = e.currentTarget.value;
							const rest = item.settings.filter((c) => c.setting !== s.name);
							set(value === s.default ? rest : [...rest, {
								setting: s.name,
								value
							}]);
						},
						children: s.values.map((v) => /* @__PURE__ */ a("option", { children: v }, v))
					})]
				}, s.name))
			]
		})
	] });
}
function Add$1({ add }) {
	const machines = room.value?.machines.filter((m) => m.sign) ?? [];
	const wanted = useSignal("");
	if (!machines.length) return null;
	return /* @__PURE__ */ a("div", {
		class: "row",
		children: [/* @__PURE__ */ a("label", {
			class: "find",
			children: [/* @__PURE__ */ a("span", { children: words.compare.choose }), /* @__PURE__ */ a("select", {
				value: wanted.value,
				onChange: (e) => wanted.value = e.currentTarget.value,
				children: [/* @__PURE__ */ a("option", {
					value: "",
					children: "…"
				}), machines.map((m) => /* @__PURE__ */ a("option", {
					value: m.id,
					children: m.name
				}, m.id))]
			})]
		}), /* @__PURE__ */ a("button", {
			type: "button",
			class: "strong",
			disabled: !wanted.value,
			onClick: () => add(wanted.value),
			children: words.compare.add
		})]
	});
}
function Differences({ comparison: c }) {
	return /* @__PURE__ */ a("section", { children: [/* @__PURE__ */ a("h2", { children: words.compare.words }), /* @__PURE__ */ a("ul", {
		class: "compare-words",
		children: c.words.map((w) => /* @__PURE__ */ a("li", { children: [
			/* @__PURE__ */ a("strong", { children: [
				w.label,
				", ",
				words.compare.first,
				" ",
				c.items[0]?.label,
				":"
			] }),
			" ",
			w.words.join(" ")
		] }, w.label))
	})] });
}
// src/state/travel.ts
var import_gifenc = (/* @__PURE__ */ __commonJSMin(((exports) => {
	var __defProp = Object.defineProperty;
	var __markAsModule = (target) => __defProp(target, "__esModule", { value: true });
	var __export = (target, all) => {
		for (var name in all) __defProp(target, name, {
			get: all[name],
			enumerable: true
		});
	};
	__markAsModule(exports);
	__export(exports, {
		GIFEncoder: () => GIFEncoder,
		applyPalette: () => applyPalette,
		default: () => src_default,
		nearestColor: () => nearestColor,
		nearestColorIndex: () => nearestColorIndex,
		nearestColorIndexWithDistance: () => nearestColorIndexWithDistance,
		prequantize: () => prequantize,
		quantize: () => quantize,
		snapColorsToPalette: () => snapColorsToPalette
	});
	var constants_default = {
		signature: "GIF",
		version: "89a",
		trailer: 59,
		extensionIntroducer: 33,
		applicationExtensionLabel: 255,
		graphicControlExtensionLabel: 249,
		imageSeparator: 44,
		signatureSize: 3,
		versionSize: 3,
		globalColorTableFlagMask: 128,
		colorResolutionMask: 112,
		sortFlagMask: 8,
		globalColorTableSizeMask: 7,
		applicationIdentifierSize: 8,
		applicationAuthCodeSize: 3,
		disposalMethodMask: 28,
		userInputFlagMask: 2,
		transparentColorFlagMask: 1,
		localColorTableFlagMask: 128,
		interlaceFlagMask: 64,
		idSortFlagMask: 32,
		localColorTableSizeMask: 7
	};
	function createStream(initialCapacity = 256) {
		let cursor = 0;
		let contents = new Uint8Array(initialCapacity);
		return {
			get buffer() {
				return contents.buffer;
			},
			reset() {
				cursor = 0;
			},
			bytesView() {
				return contents.subarray(0, cursor);
			},
			bytes() {
				return contents.slice(0, cursor);
			},
			writeByte(byte) {
				expand(cursor + 1);
				contents[cursor] = byte;
				cursor++;
			},
			writeBytes(data, offset = 0, byteLength = data.length) {
				expand(cursor + byteLength);
				for (let i = 0; i < byteLength; i++) contents[cursor++] = data[i + offset];
			},
			writeBytesView(data, offset = 0, byteLength = data.byteLength) {
				expand(cursor + byteLength);
				contents.set(data.subarray(offset, offset + byteLength), cursor);
				cursor += byteLength;
			}
		};
		function expand(newCapacity) {
			var prevCapacity = contents.length;
			if (prevCapacity >= newCapacity) return;
			newCapacity = Math.max(newCapacity, prevCapacity * (prevCapacity < 1048576 ? 2 : 1.125) >>> 0);
			if (prevCapacity != 0) newCapacity = Math.max(newCapacity, 256);
			const oldContents = contents;
			contents = new Uint8Array(newCapacity);
			if (cursor > 0) contents.set(oldContents.subarray(0, cursor), 0);
		}
	}
	var BITS = 12;
	var DEFAULT_HSIZE = 5003;
	var MASKS = [
		0,
		1,
		3,
		7,
		15,
		31,
		63,
		127,
		255,
		511,
		1023,
		2047,
		4095,
		8191,
		16383,
		32767,
		65535
	];
	function lzwEncode(width, height, pixels, colorDepth, outStream = createStream(512), accum = /* @__PURE__ */ new Uint8Array(256), htab = new Int32Array(DEFAULT_HSIZE), codetab = new Int32Array(DEFAULT_HSIZE)) {
		const hsize = htab.length;
		const initCodeSize = Math.max(2, colorDepth);
		accum.fill(0);
		codetab.fill(0);
		htab.fill(-1);
		let cur_accum = 0;
		let cur_bits = 0;
		const init_bits = initCodeSize + 1;
		const g_init_bits = init_bits;
		let clear_flg = false;
		let n_bits = g_init_bits;
		let maxcode = (1 << n_bits) - 1;
		const ClearCode = 1 << init_bits - 1;
		const EOFCode = ClearCode + 1;
		let free_ent = ClearCode + 2;
		let a_count = 0;
		let ent = pixels[0];
		let hshift = 0;
		for (let fcode = hsize; fcode < 65536; fcode *= 2) ++hshift;
		hshift = 8 - hshift;
		outStream.writeByte(initCodeSize);
		output(ClearCode);
		const length = pixels.length;
		for (let idx = 1; idx < length; idx++) next_block: {
			const c = pixels[idx];
			const fcode = (c << BITS) + ent;
			let i = c << hshift ^ ent;
			if (htab[i] === fcode) {
				ent = codetab[i];
				break next_block;
			}
			const disp = i === 0 ? 1 : hsize - i;
			while (htab[i] >= 0) {
				i -= disp;
				if (i < 0) i += hsize;
				if (htab[i] === fcode) {
					ent = codetab[i];
					break next_block;
				}
			}
			output(ent);
			ent = c;
			if (free_ent < 1 << BITS) {
				codetab[i] = free_ent++;
				htab[i] = fcode;
			} else {
				htab.fill(-1);
				free_ent = ClearCode + 2;
				clear_flg = true;
				output(ClearCode);
			}
		}
		output(ent);
		output(EOFCode);
		outStream.writeByte(0);
		return outStream.bytesView();
		function output(code) {
			cur_accum &= MASKS[cur_bits];
			if (cur_bits > 0) cur_accum |= code << cur_bits;
			else cur_accum = code;
			cur_bits += n_bits;
			while (cur_bits >= 8) {
				accum[a_count++] = cur_accum & 255;
				if (a_count >= 254) {
					outStream.writeByte(a_count);
					outStream.writeBytesView(accum, 0, a_count);
					a_count = 0;
				}
				cur_accum >>= 8;
				cur_bits -= 8;
			}
			if (free_ent > maxcode || clear_flg) {
				if (clear_flg) {
					n_bits = g_init_bits;
					maxcode = (1 << n_bits) - 1;
					clear_flg = false;
				} else {
					++n_bits;
					maxcode = n_bits === BITS ? 1 << n_bits : (1 << n_bits) - 1;
				}
			}
			if (code == EOFCode) {
				while (cur_bits > 0) {
					accum[a_count++] = cur_accum & 255;
					if (a_count >= 254) {
						outStream.writeByte(a_count);
						outStream.writeBytesView(accum, 0, a_count);
						a_count = 0;
					}
					cur_accum >>= 8;
					cur_bits -= 8;
				}
				if (a_count > 0) {
					outStream.writeByte(a_count);
					outStream.writeBytesView(accum, 0, a_count);
					a_count = 0;
				}
			}
		}
	}
	var lzwEncode_default = lzwEncode;
	function rgb888_to_rgb565(r, g, b) {
		return r << 8 & 63488 | g << 2 & 992 | b >> 3;
	}
	function rgba8888_to_rgba4444(r, g, b, a) {
		return r >> 4 | g & 240 | (b & 240) << 4 | (a & 240) << 8;
	}
	function rgb888_to_rgb444(r, g, b) {
		return r >> 4 << 8 | g & 240 | b >> 4;
	}
	function clamp(value, min, max) {
		return value < min ? min : value > max ? max : value;
	}
	function sqr(value) {
		return value * value;
	}
	function find_nn(bins, idx, hasAlpha) {
		var nn = 0;
		var err = 1e100;
		const bin1 = bins[idx];
		const n1 = bin1.cnt;
		const wa = bin1.ac;
		const wr = bin1.rc;
		const wg = bin1.gc;
		const wb = bin1.bc;
		for (var i = bin1.fw; i != 0; i = bins[i].fw) {
			const bin = bins[i];
			const n2 = bin.cnt;
			const nerr2 = n1 * n2 / (n1 + n2);
			if (nerr2 >= err) continue;
			var nerr = 0;
			if (hasAlpha) {
				nerr += nerr2 * sqr(bin.ac - wa);
				if (nerr >= err) continue;
			}
			nerr += nerr2 * sqr(bin.rc - wr);
			if (nerr >= err) continue;
			nerr += nerr2 * sqr(bin.gc - wg);
			if (nerr >= err) continue;
			nerr += nerr2 * sqr(bin.bc - wb);
			if (nerr >= err) continue;
			err = nerr;
			nn = i;
		}
		bin1.err = err;
		bin1.nn = nn;
	}
	function create_bin() {
		return {
			ac: 0,
			rc: 0,
			gc: 0,
			bc: 0,
			cnt: 0,
			nn: 0,
			fw: 0,
			bk: 0,
			tm: 0,
			mtm: 0,
			err: 0
		};
	}
	function create_bin_list(data, format) {
		const bins = new Array(format === "rgb444" ? 4096 : 65536);
		const size = data.length;
		if (format === "rgba4444") for (let i = 0; i < size; ++i) {
			const color = data[i];
			const a = color >> 24 & 255;
			const b = color >> 16 & 255;
			const g = color >> 8 & 255;
			const r = color & 255;
			const index = rgba8888_to_rgba4444(r, g, b, a);
			let bin = index in bins ? bins[index] : bins[index] = create_bin();
			bin.rc += r;
			bin.gc += g;
			bin.bc += b;
			bin.ac += a;
			bin.cnt++;
		}
		else if (format === "rgb444") for (let i = 0; i < size; ++i) {
			const color = data[i];
			const b = color >> 16 & 255;
			const g = color >> 8 & 255;
			const r = color & 255;
			const index = rgb888_to_rgb444(r, g, b);
			let bin = index in bins ? bins[index] : bins[index] = create_bin();
			bin.rc += r;
			bin.gc += g;
			bin.bc += b;
			bin.cnt++;
		}
		else for (let i = 0; i < size; ++i) {
			const color = data[i];
			const b = color >> 16 & 255;
			const g = color >> 8 & 255;
			const r = color & 255;
			const index = rgb888_to_rgb565(r, g, b);
			let bin = index in bins ? bins[index] : bins[index] = create_bin();
			bin.rc += r;
			bin.gc += g;
			bin.bc += b;
			bin.cnt++;
		}
		return bins;
	}
	function quantize(rgba, maxColors, opts = {}) {
		const { format = "rgb565", clearAlpha = true, clearAlphaColor = 0, clearAlphaThreshold = 0, oneBitAlpha = false } = opts;
		if (!rgba || !rgba.buffer) throw new Error("quantize() expected RGBA Uint8Array data");
		if (!(rgba instanceof Uint8Array) && !(rgba instanceof Uint8ClampedArray)) throw new Error("quantize() expected RGBA Uint8Array data");
		const data = new Uint32Array(rgba.buffer);
		let useSqrt = opts.useSqrt !== false;
		const hasAlpha = format === "rgba4444";
		const bins = create_bin_list(data, format);
		const bincount = bins.length;
		const bincountMinusOne = bincount - 1;
		const heap = new Uint32Array(bincount + 1);
		var maxbins = 0;
		for (var i = 0; i < bincount; ++i) {
			const bin = bins[i];
			if (bin != null) {
				var d = 1 / bin.cnt;
				if (hasAlpha) bin.ac *= d;
				bin.rc *= d;
				bin.gc *= d;
				bin.bc *= d;
				bins[maxbins++] = bin;
			}
		}
		if (sqr(maxColors) / maxbins < .022) useSqrt = false;
		var i = 0;
		for (; i < maxbins - 1; ++i) {
			bins[i].fw = i + 1;
			bins[i + 1].bk = i;
			if (useSqrt) bins[i].cnt = Math.sqrt(bins[i].cnt);
		}
		if (useSqrt) bins[i].cnt = Math.sqrt(bins[i].cnt);
		var h, l, l2;
		for (i = 0; i < maxbins; ++i) {
			find_nn(bins, i, false);
			var err = bins[i].err;
			for (l = ++heap[0]; l > 1; l = l2) {
				l2 = l >> 1;
				if (bins[h = heap[l2]].err <= err) break;
				heap[l] = h;
			}
			heap[l] = i;
		}
		var extbins = maxbins - maxColors;
		for (i = 0; i < extbins;) {
			var tb;
			for (;;) {
				var b1 = heap[1];
				tb = bins[b1];
				if (tb.tm >= tb.mtm && bins[tb.nn].mtm <= tb.tm) break;
				if (tb.mtm == bincountMinusOne) b1 = heap[1] = heap[heap[0]--];
				else {
					find_nn(bins, b1, false);
					tb.tm = i;
				}
				var err = bins[b1].err;
				for (l = 1; (l2 = l + l) <= heap[0]; l = l2) {
					if (l2 < heap[0] && bins[heap[l2]].err > bins[heap[l2 + 1]].err) l2++;
					if (err <= bins[h = heap[l2]].err) break;
					heap[l] = h;
				}
				heap[l] = b1;
			}
			var nb = bins[tb.nn];
			var n1 = tb.cnt;
			var n2 = nb.cnt;
			var d = 1 / (n1 + n2);
			if (hasAlpha) tb.ac = d * (n1 * tb.ac + n2 * nb.ac);
			tb.rc = d * (n1 * tb.rc + n2 * nb.rc);
			tb.gc = d * (n1 * tb.gc + n2 * nb.gc);
			tb.bc = d * (n1 * tb.bc + n2 * nb.bc);
			tb.cnt += nb.cnt;
			tb.mtm = ++i;
			bins[nb.bk].fw = nb.fw;
			bins[nb.fw].bk = nb.bk;
			nb.mtm = bincountMinusOne;
		}
		let palette = [];
		var k = 0;
		for (i = 0;; ++k) {
			let r = clamp(Math.round(bins[i].rc), 0, 255);
			let g = clamp(Math.round(bins[i].gc), 0, 255);
			let b = clamp(Math.round(bins[i].bc), 0, 255);
			let a = 255;
			if (hasAlpha) {
				a = clamp(Math.round(bins[i].ac), 0, 255);
				if (oneBitAlpha) a = a <= (typeof oneBitAlpha === "number" ? oneBitAlpha : 127) ? 0 : 255;
				if (clearAlpha && a <= clearAlphaThreshold) {
					r = g = b = clearAlphaColor;
					a = 0;
				}
			}
			const color = hasAlpha ? [
				r,
				g,
				b,
				a
			] : [
				r,
				g,
				b
			];
			if (!existsInPalette(palette, color)) palette.push(color);
			if ((i = bins[i].fw) == 0) break;
		}
		return palette;
	}
	function existsInPalette(palette, color) {
		for (let i = 0; i < palette.length; i++) {
			const p = palette[i];
			let matchesRGB = p[0] === color[0] && p[1] === color[1] && p[2] === color[2];
			let matchesAlpha = p.length >= 4 && color.length >= 4 ? p[3] === color[3] : true;
			if (matchesRGB && matchesAlpha) return true;
		}
		return false;
	}
	function euclideanDistanceSquared(a, b) {
		var sum = 0;
		var n = 0;
		for (; n < a.length; n++) {
			const dx = a[n] - b[n];
			sum += dx * dx;
		}
		return sum;
	}
	function roundStep(byte, step) {
		return step > 1 ? Math.round(byte / step) * step : byte;
	}
	function prequantize(rgba, { roundRGB = 5, roundAlpha = 10, oneBitAlpha = null } = {}) {
		const data = new Uint32Array(rgba.buffer);
		for (let i = 0; i < data.length; i++) {
			const color = data[i];
			let a = color >> 24 & 255;
			let b = color >> 16 & 255;
			let g = color >> 8 & 255;
			let r = color & 255;
			a = roundStep(a, roundAlpha);
			if (oneBitAlpha) a = a <= (typeof oneBitAlpha === "number" ? oneBitAlpha : 127) ? 0 : 255;
			r = roundStep(r, roundRGB);
			g = roundStep(g, roundRGB);
			b = roundStep(b, roundRGB);
			data[i] = a << 24 | b << 16 | g << 8 | r << 0;
		}
	}
	function applyPalette(rgba, palette, format = "rgb565") {
		if (!rgba || !rgba.buffer) throw new Error("quantize() expected RGBA Uint8Array data");
		if (!(rgba instanceof Uint8Array) && !(rgba instanceof Uint8ClampedArray)) throw new Error("quantize() expected RGBA Uint8Array data");
		if (palette.length > 256) throw new Error("applyPalette() only works with 256 colors or less");
		const data = new Uint32Array(rgba.buffer);
		const length = data.length;
		const bincount = format === "rgb444" ? 4096 : 65536;
		const index = new Uint8Array(length);
		const cache = new Array(bincount);
		if (format === "rgba4444") for (let i = 0; i < length; i++) {
			const color = data[i];
			const a = color >> 24 & 255;
			const b = color >> 16 & 255;
			const g = color >> 8 & 255;
			const r = color & 255;
			const key = rgba8888_to_rgba4444(r, g, b, a);
			const idx = key in cache ? cache[key] : cache[key] = nearestColorIndexRGBA(r, g, b, a, palette);
			index[i] = idx;
		}
		else {
			const rgb888_to_key = format === "rgb444" ? rgb888_to_rgb444 : rgb888_to_rgb565;
			for (let i = 0; i < length; i++) {
				const color = data[i];
				const b = color >> 16 & 255;
				const g = color >> 8 & 255;
				const r = color & 255;
				const key = rgb888_to_key(r, g, b);
				const idx = key in cache ? cache[key] : cache[key] = nearestColorIndexRGB(r, g, b, palette);
				index[i] = idx;
			}
		}
		return index;
	}
	function nearestColorIndexRGBA(r, g, b, a, palette) {
		let k = 0;
		let mindist = 1e100;
		for (let i = 0; i < palette.length; i++) {
			const px2 = palette[i];
			const a2 = px2[3];
			let curdist = sqr2(a2 - a);
			if (curdist > mindist) continue;
			const r2 = px2[0];
			curdist += sqr2(r2 - r);
			if (curdist > mindist) continue;
			const g2 = px2[1];
			curdist += sqr2(g2 - g);
			if (curdist > mindist) continue;
			const b2 = px2[2];
			curdist += sqr2(b2 - b);
			if (curdist > mindist) continue;
			mindist = curdist;
			k = i;
		}
		return k;
	}
	function nearestColorIndexRGB(r, g, b, palette) {
		let k = 0;
		let mindist = 1e100;
		for (let i = 0; i < palette.length; i++) {
			const px2 = palette[i];
			const r2 = px2[0];
			let curdist = sqr2(r2 - r);
			if (curdist > mindist) continue;
			const g2 = px2[1];
			curdist += sqr2(g2 - g);
			if (curdist > mindist) continue;
			const b2 = px2[2];
			curdist += sqr2(b2 - b);
			if (curdist > mindist) continue;
			mindist = curdist;
			k = i;
		}
		return k;
	}
	function snapColorsToPalette(palette, knownColors, threshold = 5) {
		if (!palette.length || !knownColors.length) return;
		const paletteRGB = palette.map((p) => p.slice(0, 3));
		const thresholdSq = threshold * threshold;
		const dim = palette[0].length;
		for (let i = 0; i < knownColors.length; i++) {
			let color = knownColors[i];
			if (color.length < dim) color = [
				color[0],
				color[1],
				color[2],
				255
			];
			else if (color.length > dim) color = color.slice(0, 3);
			else color = color.slice();
			const r = nearestColorIndexWithDistance(paletteRGB, color.slice(0, 3), euclideanDistanceSquared);
			const idx = r[0];
			const distanceSq = r[1];
			if (distanceSq > 0 && distanceSq <= thresholdSq) palette[idx] = color;
		}
	}
	function sqr2(a) {
		return a * a;
	}
	function nearestColorIndex(colors, pixel, distanceFn = euclideanDistanceSquared) {
		let minDist = Infinity;
		let minDistIndex = -1;
		for (let j = 0; j < colors.length; j++) {
			const paletteColor = colors[j];
			const dist = distanceFn(pixel, paletteColor);
			if (dist < minDist) {
				minDist = dist;
				minDistIndex = j;
			}
		}
		return minDistIndex;
	}
	function nearestColorIndexWithDistance(colors, pixel, distanceFn = euclideanDistanceSquared) {
		let minDist = Infinity;
		let minDistIndex = -1;
		for (let j = 0; j < colors.length; j++) {
			const paletteColor = colors[j];
			const dist = distanceFn(pixel, paletteColor);
			if (dist < minDist) {
				minDist = dist;
				minDistIndex = j;
			}
		}
		return [minDistIndex, minDist];
	}
	function nearestColor(colors, pixel, distanceFn = euclideanDistanceSquared) {
		return colors[nearestColorIndex(colors, pixel, distanceFn)];
	}
	function GIFEncoder(opt = {}) {
		const { initialCapacity = 4096, auto = true } = opt;
		const stream = createStream(initialCapacity);
		const HSIZE = 5003;
		const accum = /* @__PURE__ */ new Uint8Array(256);
		const htab = new Int32Array(HSIZE);
		const codetab = new Int32Array(HSIZE);
		let hasInit = false;
		return {
			reset() {
				stream.reset();
				hasInit = false;
			},
			finish() {
				stream.writeByte(constants_default.trailer);
			},
			bytes() {
				return stream.bytes();
			},
			bytesView() {
				return stream.bytesView();
			},
			get buffer() {
				return stream.buffer;
			},
			get stream() {
				return stream;
			},
			writeHeader,
			writeFrame(index, width, height, opts = {}) {
				const { transparent = false, transparentIndex = 0, delay = 0, palette = null, repeat = 0, colorDepth = 8, dispose = -1 } = opts;
				let first = false;
				if (auto) {
					if (!hasInit) {
						first = true;
						writeHeader();
						hasInit = true;
					}
				} else first = Boolean(opts.first);
				width = Math.max(0, Math.floor(width));
				height = Math.max(0, Math.floor(height));
				if (first) {
					if (!palette) throw new Error("First frame must include a { palette } option");
					encodeLogicalScreenDescriptor(stream, width, height, palette, colorDepth);
					encodeColorTable(stream, palette);
					if (repeat >= 0) encodeNetscapeExt(stream, repeat);
				}
				const delayTime = Math.round(delay / 10);
				encodeGraphicControlExt(stream, dispose, delayTime, transparent, transparentIndex);
				const useLocalColorTable = Boolean(palette) && !first;
				encodeImageDescriptor(stream, width, height, useLocalColorTable ? palette : null);
				if (useLocalColorTable) encodeColorTable(stream, palette);
				encodePixels(stream, index, width, height, colorDepth, accum, htab, codetab);
			}
		};
		function writeHeader() {
			writeUTFBytes(stream, "GIF89a");
		}
	}
	function encodeGraphicControlExt(stream, dispose, delay, transparent, transparentIndex) {
		stream.writeByte(33);
		stream.writeByte(249);
		stream.writeByte(4);
		if (transparentIndex < 0) {
			transparentIndex = 0;
			transparent = false;
		}
		var transp, disp;
		if (!transparent) {
			transp = 0;
			disp = 0;
		} else {
			transp = 1;
			disp = 2;
		}
		if (dispose >= 0) disp = dispose & 7;
		disp <<= 2;
		stream.writeByte(disp | 0 | transp);
		writeUInt16(stream, delay);
		stream.writeByte(transparentIndex || 0);
		stream.writeByte(0);
	}
	function encodeLogicalScreenDescriptor(stream, width, height, palette, colorDepth = 8) {
		const globalColorTableSize = colorTableSize(palette.length) - 1;
		const fields = colorDepth - 1 << 4 | 128 | globalColorTableSize;
		const backgroundColorIndex = 0;
		const pixelAspectRatio = 0;
		writeUInt16(stream, width);
		writeUInt16(stream, height);
		stream.writeBytes([
			fields,
			backgroundColorIndex,
			pixelAspectRatio
		]);
	}
	function encodeNetscapeExt(stream, repeat) {
		stream.writeByte(33);
		stream.writeByte(255);
		stream.writeByte(11);
		writeUTFBytes(stream, "NETSCAPE2.0");
		stream.writeByte(3);
		stream.writeByte(1);
		writeUInt16(stream, repeat);
		stream.writeByte(0);
	}
	function encodeColorTable(stream, palette) {
		const colorTableLength = 1 << colorTableSize(palette.length);
		for (let i = 0; i < colorTableLength; i++) {
			let color = [
				0,
				0,
				0
			];
			if (i < palette.length) color = palette[i];
			stream.writeByte(color[0]);
			stream.writeByte(color[1]);
			stream.writeByte(color[2]);
		}
	}
	function encodeImageDescriptor(stream, width, height, localPalette) {
		stream.writeByte(44);
		writeUInt16(stream, 0);
		writeUInt16(stream, 0);
		writeUInt16(stream, width);
		writeUInt16(stream, height);
		if (localPalette) {
			const palSize = colorTableSize(localPalette.length) - 1;
			stream.writeByte(128 | palSize);
		} else stream.writeByte(0);
	}
	function encodePixels(stream, index, width, height, colorDepth = 8, accum, htab, codetab) {
		lzwEncode_default(width, height, index, colorDepth, stream, accum, htab, codetab);
	}
	function writeUInt16(stream, short) {
		stream.writeByte(short & 255);
		stream.writeByte(short >> 8 & 255);
	}
	function writeUTFBytes(stream, text) {
		for (var i = 0; i < text.length; i++) stream.writeByte(text.charCodeAt(i));
	}
	function colorTableSize(length) {
		return Math.max(Math.ceil(Math.log2(length)), 1);
	}
	var src_default = GIFEncoder;
})))();
/** travelAt returns how far the contact has come at the time, m; the stroke begins anew after its end. */
function travelAt(s, time) {
	const whole = s.time.at(-1) ?? 0;
	if (!(whole > 0)) return 0;
	const t = time % whole;
	let low = 0;
	let high = s.time.length - 1;
	while (high - low > 1) {
		const middle = low + high >> 1;
		if (s.time[middle] <= t) low = middle;
		else high = middle;
	}
	const [t0, t1] = [s.time[low], s.time[high]];
	const part = t1 > t0 ? (t - t0) / (t1 - t0) : 0;
	return s.travel[low] + (s.travel[high] - s.travel[low]) * part;
}
// src/style/drawing.css?inline
var drawing_default = "/* The figure and the chart. Kept apart: pictures that leave the page carry this file with them. */\n.sign {\n  width: 96px;\n  height: 96px;\n}\n.figure,\n.plot,\n.sign,\n.handles {\n  font:\n    13px system-ui,\n    \"Segoe UI\",\n    Roboto,\n    \"Noto Sans\",\n    \"DejaVu Sans\",\n    sans-serif;\n  font-variant-numeric: tabular-nums;\n}\n.figure path,\n.figure circle,\n.ribbon path {\n  stroke-linejoin: round;\n}\n.ribbon .sure {\n  fill: var(--load-fill);\n}\n.hatch {\n  stroke: var(--load);\n  stroke-width: 1.4;\n}\n.ribbon .edge {\n  fill: none;\n  stroke: var(--load);\n  stroke-width: 1.8;\n}\n.ribbon .way {\n  fill: none;\n  stroke: var(--load);\n  stroke-width: 2.6;\n}\n.ribbon .gap {\n  fill: none;\n  stroke: var(--warn);\n  stroke-width: 2.4;\n  stroke-dasharray: 0.5 6;\n  stroke-linecap: round;\n}\n.ribbon .way-head {\n  fill: var(--load);\n}\n.ribbon .way-start {\n  fill: var(--paper);\n  stroke: var(--load);\n  stroke-width: 2.2;\n}\n.ribbon .cut-gap {\n  stroke: var(--paper);\n  stroke-width: 4.5;\n}\n.ribbon .cut {\n  stroke: var(--ink);\n  stroke-width: 1;\n}\n.third-names text {\n  fill: var(--ink);\n  text-anchor: middle;\n}\n.here path {\n  stroke: var(--ink);\n  stroke-width: 1.6;\n}\n.here circle {\n  fill: var(--ink);\n}\n.links path {\n  fill: none;\n  stroke-linecap: round;\n}\n.link-rim {\n  stroke: var(--link);\n  stroke-width: 11;\n}\n.link-core {\n  stroke: var(--link-core);\n  stroke-width: 8;\n}\n.guides path {\n  stroke: var(--ground);\n  stroke-width: 3;\n  opacity: 0.6;\n}\n.pin {\n  fill: var(--paper);\n  stroke: var(--link);\n  stroke-width: 2;\n}\n.support {\n  fill: none;\n  stroke: var(--ground);\n  stroke-width: 1.5;\n}\n.wheel path {\n  fill: var(--link-core);\n  fill-opacity: 0.45;\n  stroke: var(--link);\n  stroke-width: 1.5;\n}\n.wheel.cam path {\n  fill-opacity: 0.7;\n  stroke-width: 2;\n}\n.wheel .hub {\n  fill: var(--link);\n}\n.line {\n  fill: none;\n  stroke: var(--rope);\n  stroke-width: 2.6;\n}\n.line.slack {\n  stroke-dasharray: 5 4;\n}\n.line.gas-spring,\n.line.damper {\n  stroke-width: 6;\n  stroke-linecap: butt;\n}\n.line.band {\n  stroke-width: 4;\n  opacity: 0.85;\n}\n.line.steady-force {\n  stroke-dasharray: 9 3;\n}\n.weight circle,\n.weight rect {\n  fill: var(--load);\n  fill-opacity: 0.14;\n  stroke: var(--load);\n  stroke-width: 2;\n}\n.weight .centre {\n  fill-opacity: 1;\n  stroke: none;\n}\n.weight.own circle {\n  stroke-width: 1;\n  stroke-dasharray: 2 3;\n}\n.weight .plates {\n  stroke: var(--load);\n  stroke-width: 0.7;\n}\n.chain {\n  fill: none;\n  stroke: var(--load);\n  stroke-width: 4;\n  stroke-dasharray: 0.5 6;\n  stroke-linecap: round;\n}\n.gravity path {\n  stroke: var(--ground);\n  stroke-width: 1.2;\n  stroke-dasharray: 7 4;\n}\n.arm .lever {\n  stroke: var(--arm);\n  stroke-width: 2;\n}\n.arm .line-of-force {\n  stroke: var(--arm);\n  stroke-width: 1.1;\n  stroke-dasharray: 3 4;\n}\n.arm .tip,\n.arm text {\n  fill: var(--arm);\n}\n.arm text {\n  text-anchor: middle;\n  font-weight: 600;\n}\n.arm text.beside {\n  text-anchor: start;\n}\n.force .shaft {\n  stroke-width: 4;\n}\n.contact-force .shaft {\n  stroke: var(--person);\n}\n.contact-force .tip {\n  fill: var(--person);\n}\n.weight-force .shaft {\n  stroke: var(--load);\n}\n.weight-force .tip {\n  fill: var(--load);\n}\n.rope-force .shaft {\n  stroke: var(--rope);\n}\n.rope-force .tip {\n  fill: var(--rope);\n}\n.contact circle {\n  fill: var(--paper);\n  fill-opacity: 0.6;\n  stroke: var(--person);\n  stroke-width: 3;\n}\n.contact .centre {\n  fill: var(--person);\n  fill-opacity: 1;\n  stroke: none;\n}\n.halo {\n  paint-order: stroke;\n  stroke: var(--paper);\n  stroke-width: 4;\n  stroke-linejoin: round;\n}\n.names text {\n  fill: var(--ink);\n}\n.names .load {\n  fill: var(--load);\n}\n.names .person {\n  fill: var(--person);\n}\n.names .bold {\n  font-weight: 700;\n  font-size: 15px;\n}\n.names .lead {\n  stroke: var(--faint);\n  stroke-width: 1;\n}\n\n.axes circle {\n  fill: none;\n  stroke: var(--arm);\n  stroke-width: 3;\n  stroke-dasharray: 4 3;\n}\n.travels path {\n  fill: none;\n  stroke-width: 5;\n  stroke-linecap: round;\n  opacity: 0.8;\n}\n.travels .load path {\n  stroke: var(--load);\n}\n.travels .person path {\n  stroke: var(--person);\n}\n.travels text {\n  fill: var(--ink);\n  font-weight: 700;\n}\n\n/* the plain curve */\n.plot {\n  display: block;\n}\n.chart-thirds rect {\n  fill: var(--third);\n}\n.chart-thirds text {\n  fill: var(--faint);\n  text-anchor: middle;\n  font-size: 12px;\n}\n.chart-scales text {\n  fill: var(--faint);\n  font-size: 12px;\n}\n.chart-scales .x {\n  text-anchor: middle;\n}\n.chart-scales .y,\n.chart-scales .title-x {\n  text-anchor: end;\n}\n.chart-scales .rule {\n  stroke: var(--rule);\n}\n.chart-scales .axis {\n  stroke: var(--edge);\n}\n.hatch-lift {\n  stroke: var(--lift);\n  stroke-width: 1.2;\n}\n.curve {\n  fill: none;\n  stroke: var(--ink);\n  stroke-width: 2.4;\n  stroke-linejoin: round;\n}\n.curve.lift,\n.curve.series-1 {\n  stroke: var(--lift);\n}\n.curve.lower,\n.curve.series-2 {\n  stroke: var(--lower);\n  stroke-dasharray: 8 4;\n}\n.curve.hold {\n  stroke: var(--hold);\n  stroke-dasharray: 2 3;\n}\n.curve.before {\n  stroke: var(--faint);\n  stroke-width: 1.6;\n  stroke-dasharray: 4 4;\n}\n.curve.series-3 {\n  stroke: var(--arm);\n  stroke-dasharray: 2 3;\n}\n.curve.series-4 {\n  stroke: var(--load);\n  stroke-dasharray: 12 3 2 3;\n}\n.curve.series-5 {\n  stroke: var(--person);\n  stroke-dasharray: 5 2;\n}\n.curve.series-6 {\n  stroke: var(--warn);\n  stroke-dasharray: 1 5;\n  stroke-linecap: round;\n}\n.cursor path {\n  stroke: var(--ink);\n  stroke-width: 1.2;\n}\n.cursor circle {\n  fill: var(--lift);\n  stroke: var(--paper);\n  stroke-width: 2;\n}\n.cursor .at-2 {\n  fill: var(--lower);\n}\n.cursor .at-3 {\n  fill: var(--arm);\n}\n.cursor .at-4 {\n  fill: var(--load);\n}\n.cursor .at-5 {\n  fill: var(--person);\n}\n.cursor .at-6 {\n  fill: var(--warn);\n}\n.cursor text {\n  fill: var(--ink);\n  font-weight: 700;\n  font-size: 14px;\n}\n.ghost {\n  opacity: 0.16;\n}\n.segment {\n  fill: var(--person);\n  fill-opacity: 0.1;\n  stroke: var(--person);\n  stroke-opacity: 0.4;\n  stroke-width: 1.2;\n}\n.segment.works {\n  fill-opacity: 0.24;\n  stroke-opacity: 0.9;\n  stroke-width: 1.6;\n}\n.body .joint {\n  fill: var(--person);\n}\n.body.stale {\n  opacity: 0.45;\n}\n.can .outline {\n  fill: none;\n  stroke: var(--person);\n  stroke-width: 2.6;\n  stroke-dasharray: 9 4;\n}\n.can .sticking {\n  fill: var(--warn);\n  stroke: var(--paper);\n  stroke-width: 1.5;\n}\n.curve.can {\n  stroke: var(--person);\n  stroke-dasharray: 9 4;\n}\n.cross {\n  fill: none;\n  stroke: var(--load);\n  stroke-width: 2.4;\n}\n";
// src/style/theme.css?inline
var theme_default = "/* Colours by role, as in internal/draw: light for paper, dark for a screen at night. */\n:root {\n  color-scheme: light;\n  --paper: #ffffff;\n  --board: #fbfaf8;\n  --raised: #f3f1ee;\n  --rule: #dcd8d2;\n  --edge: #87817a;\n  --ink: #1d2329;\n  --faint: #5a6570;\n  --ground: #6b6257;\n  --link: #33475b;\n  --link-core: #d8e0e8;\n  --rope: #8a5a00;\n  --load: #7a2e8e;\n  --load-fill: #d4bcdb;\n  --load-faint: #f0e7f3;\n  --on-load: #ffffff;\n  --arm: #00707a;\n  --person: #2f6f3a;\n  --lift: #1f5fbf;\n  --lower: #b04a00;\n  --hold: #5a5f00;\n  --warn: #b3123a;\n  --warn-faint: #fbe9ed;\n  --third: #f0eeea;\n}\n@media (prefers-color-scheme: dark) {\n  :root:not([data-theme=\"light\"]) {\n    color-scheme: dark;\n    --paper: #14191e;\n    --board: #181e24;\n    --raised: #212931;\n    --rule: #343e48;\n    --edge: #7d8994;\n    --ink: #e8ecef;\n    --faint: #a3afba;\n    --ground: #b5a999;\n    --link: #a9c0d6;\n    --link-core: #2c3a47;\n    --rope: #e0b052;\n    --load: #d59be6;\n    --load-fill: #523a5c;\n    --load-faint: #2a2331;\n    --on-load: #14191e;\n    --arm: #54c6d0;\n    --person: #86cf93;\n    --lift: #7fb2ff;\n    --lower: #ff9d5c;\n    --hold: #c9cf5a;\n    --warn: #ff8098;\n    --warn-faint: #35202a;\n    --third: #1e252c;\n  }\n}\n:root[data-theme=\"dark\"] {\n  color-scheme: dark;\n  --paper: #14191e;\n  --board: #181e24;\n  --raised: #212931;\n  --rule: #343e48;\n  --edge: #7d8994;\n  --ink: #e8ecef;\n  --faint: #a3afba;\n  --ground: #b5a999;\n  --link: #a9c0d6;\n  --link-core: #2c3a47;\n  --rope: #e0b052;\n  --load: #d59be6;\n  --load-fill: #523a5c;\n  --load-faint: #2a2331;\n  --on-load: #14191e;\n  --arm: #54c6d0;\n  --person: #86cf93;\n  --lift: #7fb2ff;\n  --lower: #ff9d5c;\n  --hold: #c9cf5a;\n  --warn: #ff8098;\n  --warn-faint: #35202a;\n  --third: #1e252c;\n}\n\n*,\n*::before,\n*::after {\n  box-sizing: border-box;\n}\nhtml {\n  background: var(--paper);\n  color: var(--ink);\n  -webkit-text-size-adjust: 100%;\n}\nbody {\n  margin: 0;\n  font:\n    1rem / 1.45 system-ui,\n    \"Segoe UI\",\n    Roboto,\n    \"Noto Sans\",\n    \"DejaVu Sans\",\n    sans-serif;\n  font-variant-numeric: tabular-nums;\n  overflow-wrap: anywhere;\n}\nh1 {\n  font-size: 1.35rem;\n  line-height: 1.2;\n  margin: 0;\n}\nh2 {\n  font-size: 1.1rem;\n  margin: 1.4rem 0 0.4rem;\n}\nh3 {\n  font-size: 0.95rem;\n  margin: 1.2rem 0 0.3rem;\n}\np {\n  margin: 0 0 0.6rem;\n}\n.faint {\n  color: var(--faint);\n}\n.small {\n  font-size: 0.86rem;\n}\n.lead {\n  max-width: 44rem;\n  color: var(--faint);\n}\n.warn-text {\n  color: var(--warn);\n}\n.unseen {\n  position: absolute;\n  width: 1px;\n  height: 1px;\n  margin: -1px;\n  overflow: hidden;\n  clip-path: inset(50%);\n  white-space: nowrap;\n}\n:focus-visible {\n  outline: 3px solid var(--load);\n  outline-offset: 2px;\n}\nmain:focus,\n.pane:focus {\n  outline: none;\n}\n.pane:focus-visible {\n  outline: 3px solid var(--load);\n  outline-offset: -3px;\n}\n@media (prefers-reduced-motion: reduce) {\n  *,\n  *::before,\n  *::after {\n    transition: none !important;\n    animation: none !important;\n  }\n}\n";
// src/explain/picture.ts
/** The figure as an SVG file or pixels that stand alone, in light colours. */
/** picture returns the figure at a position of its curve as the text of an SVG file. */
function picture(p, position, show, size, units) {
	const stage = stageFor(p, position, size, units);
	if (!stage) return "";
	const box = document.createElementNS("http://www.w3.org/2000/svg", "svg");
	Q(k$2(Figure, {
		stage,
		show,
		id: "unsure",
		trail: p.frames
	}), box);
	const inner = new XMLSerializer().serializeToString(box).replace(/^<svg[^>]*>|<\/svg>$/g, "");
	Q(null, box);
	const { width, height } = size;
	return `<svg xmlns="http://www.w3.org/2000/svg" data-theme="light" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"><style>${theme_default}${drawing_default}</style><rect width="100%" height="100%" fill="#ffffff"/>${inner}</svg>`;
}
/** painted draws an SVG text on the canvas. */
async function onCanvas(svg, canvas) {
	const image = new Image();
	const address = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
	try {
		image.src = address;
		await image.decode();
		canvas.getContext("2d").drawImage(image, 0, 0, canvas.width, canvas.height);
	} finally {
		URL.revokeObjectURL(address);
	}
}
// src/explain/film.ts
/** One repetition as a GIF or WebM, made in the browser. */
var size = {
	width: 640,
	height: 480
};
var show = /* @__PURE__ */ new Set([
	"ribbon",
	"loadArm",
	"contactArm",
	"forces",
	"names"
]);
var mostFrames = 90;
var colours = 64;
/** shots returns the pictures of one repetition; pictures that would be alike stand longer instead. */
function shots(p) {
	const { stroke, curve } = p;
	if (!stroke || !curve) return [];
	const whole = stroke.time.at(-1) ?? 0;
	const n = Math.min(mostFrames, Math.max(12, Math.round(whole * 15)));
	const still = whole / n * 1e3;
	const out = [];
	for (let i = 0; i < n; i++) {
		const share = travelAt(stroke, i / n * whole) / (curve.travel.at(-1) || 1);
		const position = at$1(curve.travel, share);
		const last = out.at(-1);
		if (last?.position === position) last.still += still;
		else out.push({
			position,
			still
		});
	}
	return out;
}
/** canvasOf returns a canvas that is drawn on, and for a GIF read back, again and again. */
function canvasOf(willReadFrequently) {
	const canvas = document.createElement("canvas");
	canvas.width = size.width;
	canvas.height = size.height;
	canvas.getContext("2d", { willReadFrequently });
	return canvas;
}
/** gif returns an animated GIF of one repetition. */
async function gif(job) {
	const canvas = canvasOf(true);
	const encoder = (0, import_gifenc.GIFEncoder)();
	const all = shots(job.preview);
	let palette = null;
	for (const [i, shot] of all.entries()) {
		job.signal.throwIfAborted();
		await onCanvas(picture(job.preview, shot.position, show, size, job.units), canvas);
		const { data } = canvas.getContext("2d").getImageData(0, 0, size.width, size.height);
		palette ??= (0, import_gifenc.quantize)(data, colours);
		const pixels = (0, import_gifenc.applyPalette)(data, palette);
		encoder.writeFrame(pixels, size.width, size.height, {
			palette: i === 0 ? palette : void 0,
			delay: shot.still
		});
		job.progress((i + 1) / all.length);
	}
	encoder.finish();
	return new Blob([encoder.bytes().buffer], { type: "image/gif" });
}
/** canFilm reports whether this browser makes WebM films. */
var canFilm = () => typeof MediaRecorder !== "undefined" && MediaRecorder.isTypeSupported("video/webm");
/** webm returns a film of one repetition; it takes as long as the repetition. */
async function webm(job) {
	const canvas = canvasOf(false);
	const all = shots(job.preview);
	const images = /* @__PURE__ */ new Map();
	for (const s of all) images.set(s.position, picture(job.preview, s.position, show, size, job.units));
	await onCanvas(images.get(all[0].position), canvas);
	const recorder = new MediaRecorder(canvas.captureStream(30), {
		mimeType: "video/webm",
		videoBitsPerSecond: 25e5
	});
	const parts = [];
	recorder.ondataavailable = (e) => parts.push(e.data);
	const stopped = new Promise((done) => recorder.onstop = done);
	recorder.start();
	try {
		for (const [i, shot] of all.entries()) {
			job.signal.throwIfAborted();
			const due = performance.now() + shot.still;
			await onCanvas(images.get(shot.position), canvas);
			await new Promise((done) => setTimeout(done, Math.max(0, due - performance.now())));
			job.progress((i + 1) / all.length);
		}
	} finally {
		recorder.stop();
	}
	await stopped;
	return new Blob(parts, { type: "video/webm" });
}
// src/explain/leaf.ts
/** leaf returns the file. What people wrote stands in it as text or JSON only. */
function leaf(data, script, style) {
	return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'unsafe-inline'; style-src 'unsafe-inline'">
<title>${escaped(data.explanation.preview.name)}</title>
<style>${style.replace(/<\/style/gi, "<\\/style")}</style>
</head>
<body>
<div id="page"></div>
<script type="application/json" id="explanation">${JSON.stringify(slim(data)).replace(/</g, "\\u003c")}<\/script>
<script>${script.replace(/<\/script/gi, "<\\/script")}<\/script>
</body>
</html>
`;
}
var entities = {
	"&": "&amp;",
	"<": "&lt;",
	">": "&gt;",
	"\"": "&quot;"
};
var escaped = (text) => text.replace(/[&<>"]/g, (c) => entities[c]);
/** slim leaves out what the presentation does not show: the sheet itself and how it was taken apart. */
function slim({ explanation, imperial }) {
	const preview = {
		...explanation.preview,
		text: "",
		structure: null,
		stroke: null
	};
	return {
		explanation: {
			...explanation,
			preview
		},
		imperial
	};
}
// src/screens/explain.tsx
/** Explains one stroke of a machine, and hands it out. */
var positions = 61;
function ExplainScreen({ id }) {
	const explanation = useSignal(null);
	const trouble = useSignal(null);
	const settings = settingsOf(id).value;
	A$1(() => {
		ask("POST /api/explain", { in: {
			sheet: id,
			look: {
				settings,
				positions,
				frames: "all",
				imperial: pounds.value,
				...who(),
				tempo: {
					up: 2,
					top: .5,
					down: 3,
					bottom: .5
				}
			}
		} }).then((e) => {
			explanation.value = e;
			trouble.value = null;
		}).catch((err) => trouble.value = troubleOf(err));
	}, [
		id,
		settings,
		pounds.value,
		trainee.value
	]);
	const e = explanation.value;
	return /* @__PURE__ */ a("div", {
		class: "explain-screen",
		children: [
			/* @__PURE__ */ a("div", {
				class: "screen-head",
				children: [/* @__PURE__ */ a(BackLink, {
					to: {
						screen: "machine",
						id
					},
					label: words.explain.previous
				}), /* @__PURE__ */ a("h1", { children: e ? words.explain.title(e.preview.name) : words.loading })]
			}),
			trouble.value && /* @__PURE__ */ a(TroubleNote, { problem: trouble.value }),
			e && e.steps.length > 0 && /* @__PURE__ */ a(ExplainView, {
				explanation: e,
				units: units.value
			}),
			e && /* @__PURE__ */ a(Take, {
				id,
				explanation: e
			})
		]
	});
}
/** Take hands the explanation out, in the form that is wanted. */
function Take({ id, explanation: e }) {
	const progress = useSignal(null);
	const trouble = useSignal(null);
	const stop = T(null);
	A$1(() => () => stop.current?.abort(), []);
	const guarded = async (make) => {
		stop.current = new AbortController();
		trouble.value = null;
		try {
			await make(stop.current.signal);
		} catch (err) {
			if (!stop.current.signal.aborted) trouble.value = troubleOf(err);
		} finally {
			progress.value = null;
		}
	};
	const film = (make, ending) => guarded(async (signal) => {
		progress.value = 0;
		save(await make({
			preview: e.preview,
			units: units.value,
			progress: (p) => progress.value = p,
			signal
		}), e.preview.name, ending);
	});
	const page = () => guarded(async () => {
		const text = leaf({
			explanation: e,
			imperial: pounds.value
		}, await asset("leaflet.js"), await asset("leaflet.css"));
		save(new Blob([text], { type: "text/html" }), e.preview.name, "html");
	});
	return /* @__PURE__ */ a("section", {
		class: "take",
		children: [
			/* @__PURE__ */ a("h2", { children: words.explain.take }),
			/* @__PURE__ */ a("div", {
				class: "row",
				children: [
					/* @__PURE__ */ a("button", {
						type: "button",
						class: "strong",
						onClick: () => void page(),
						children: words.explain.formats.html
					}),
					/* @__PURE__ */ a("button", {
						type: "button",
						disabled: progress.value !== null,
						onClick: () => void film(gif, "gif"),
						children: words.explain.formats.gif
					}),
					canFilm() && /* @__PURE__ */ a("button", {
						type: "button",
						disabled: progress.value !== null,
						onClick: () => void film(webm, "webm"),
						children: words.explain.formats.webm
					}),
					[
						"png",
						"svg",
						"pdf",
						"html"
					].map((ext) => /* @__PURE__ */ a("a", {
						class: "button",
						href: reportAddress(id, ext, e),
						download: fileName(e.preview.name, ext),
						children: ext === "html" ? words.explain.formats.report : words.explain.formats[ext]
					}, ext))
				]
			}),
			/* @__PURE__ */ a("p", {
				class: "faint small",
				children: words.explain.htmlHint
			}),
			progress.value !== null && /* @__PURE__ */ a("div", {
				class: "row",
				role: "status",
				children: [
					/* @__PURE__ */ a("progress", {
						max: 1,
						value: progress.value,
						"aria-label": words.explain.film("")
					}),
					/* @__PURE__ */ a("span", { children: words.explain.film(percent(progress.value)) }),
					/* @__PURE__ */ a("button", {
						type: "button",
						onClick: () => stop.current?.abort(),
						children: words.cancel
					})
				]
			}),
			trouble.value && /* @__PURE__ */ a(TroubleNote, { problem: trouble.value }),
			/* @__PURE__ */ a(Message, { text: e.message })
		]
	});
}
function Message({ text }) {
	const area = T(null);
	const said = useSignal("");
	const copy = async () => {
		try {
			await navigator.clipboard.writeText(text);
			said.value = words.explain.copied;
		} catch {
			area.current?.select();
			said.value = words.explain.copyByHand;
		}
	};
	return /* @__PURE__ */ a("div", {
		class: "message",
		children: [
			/* @__PURE__ */ a("h3", { children: words.explain.message }),
			/* @__PURE__ */ a("textarea", {
				ref: area,
				readOnly: true,
				rows: 5,
				value: text,
				"aria-label": words.explain.message
			}),
			/* @__PURE__ */ a("div", {
				class: "row",
				children: [/* @__PURE__ */ a("button", {
					type: "button",
					onClick: () => void copy(),
					children: words.explain.copy
				}), /* @__PURE__ */ a("span", {
					role: "status",
					children: said.value
				})]
			})
		]
	});
}
async function asset(name) {
	const answer = await fetch(new URL(name, document.baseURI));
	if (!answer.ok) throw new Error(words.trouble.status(answer.status));
	return answer.text();
}
function reportAddress(id, ext, e) {
	const set = e.preview.settings.map((c) => `${c.setting}=${c.value}`);
	return addressOf("GET /api/sheets/{id}/report/{ext}", {
		id,
		ext
	}, {
		set,
		...pounds.value ? { units: "imperial" } : {},
		...who()
	});
}
/** fileName returns a name every system takes. */
var fileName = (name, ending) => `${name.replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-+|-+$/g, "").slice(0, 60) || "machine"}.${ending}`;
function save(file, name, ending) {
	const link = document.createElement("a");
	link.href = URL.createObjectURL(file);
	link.download = fileName(name, ending);
	link.click();
	setTimeout(() => URL.revokeObjectURL(link.href), 1e4);
}
// src/parts/tabs.tsx
function Tabs({ label, tabs, open, choose, children }) {
	const id = P();
	const turn = (e) => {
		const by = e.key === "ArrowRight" ? 1 : e.key === "ArrowLeft" ? -1 : 0;
		if (!by) return;
		const next = tabs[(tabs.findIndex((t) => t.value === open) + by + tabs.length) % tabs.length];
		choose(next.value);
		document.getElementById(`${id}${next.value}`)?.focus();
	};
	return /* @__PURE__ */ a($, { children: [/* @__PURE__ */ a("div", {
		class: "tabs",
		role: "tablist",
		"aria-label": label,
		onKeyDown: turn,
		children: tabs.map((t) => /* @__PURE__ */ a("button", {
			type: "button",
			role: "tab",
			id: `${id}${t.value}`,
			"aria-selected": t.value === open,
			"aria-controls": `${id}pane`,
			tabIndex: t.value === open ? 0 : -1,
			onClick: () => choose(t.value),
			children: t.name
		}, t.value))
	}), /* @__PURE__ */ a("div", {
		class: "pane",
		role: "tabpanel",
		id: `${id}pane`,
		"aria-labelledby": `${id}${open}`,
		tabIndex: 0,
		children
	})] });
}
// src/parts/wide.ts
var query = "(min-width: 900px)";
/** useWide reports whether there is room for two columns. */
function useWide() {
	const [wide, setWide] = d$2(() => matchMedia(query).matches);
	A$1(() => {
		const list = matchMedia(query);
		const read = () => setWide(list.matches);
		list.addEventListener("change", read);
		return () => list.removeEventListener("change", read);
	}, []);
	return wide;
}
// src/state/painted.ts
/**
* Records how long it took from a move of the finger until the answer stood on
* the page, as performance measures: "steelyard:drag" until the changed page
* was laid out, "steelyard:shown" until the frame after that.
*/
function painted(since) {
	queueMicrotask(() => {
		document.body.getBoundingClientRect();
		performance.measure("steelyard:drag", {
			start: since,
			end: performance.now()
		});
		requestAnimationFrame(() => {
			const after = new MessageChannel();
			after.port1.onmessage = () => performance.measure("steelyard:shown", {
				start: since,
				end: performance.now()
			});
			after.port2.postMessage(null);
		});
	});
}
// src/state/bench.ts
/** The machine being looked at: what is stored, what is tried, and where in its travel it stands. */
/** settleAfter is how long nothing must change before all poses are asked for, ms. */
var settleAfter = 120;
/** quickPositions is how many places of the travel are computed while a finger moves. */
var quickPositions = 61;
var Bench = class {
	id;
	sheet = y$1(null);
	settled = y$1(null);
	trial = y$1(null);
	edits = y$1([]);
	problems = y$1([]);
	trouble = y$1(null);
	notice = y$1("");
	conflict = y$1(null);
	choices;
	share = y$1(0);
	tempo = y$1({
		up: 2,
		top: 1,
		down: 3,
		bottom: 1
	});
	saving = y$1(false);
	readings = y$1([]);
	shown = O(() => this.trial.value ?? this.settled.value);
	position = O(() => {
		const curve = this.shown.value?.curve;
		return curve ? at$1(curve.travel, this.share.value) : 0;
	});
	frame = O(() => {
		const preview = this.shown.value;
		if (!preview?.frames.length) return null;
		return preview.frames.find((f) => f.position === this.position.value) ?? preview.frames[0];
	});
	#writing = Promise.resolve();
	#timer = 0;
	#channel = "BroadcastChannel" in globalThis ? new BroadcastChannel("steelyard") : null;
	#quick = new Latest((question) => ask("POST /api/preview", { in: question.ask }), (answer, question) => this.#tried(answer, question.since), (err) => this.#failed(err));
	#careful = new Latest((question) => ask("POST /api/preview", { in: question }), (answer, question) => {
		if (question.edits === this.edits.value) this.#tried(answer);
	}, (err) => this.#failed(err));
	#full = new Latest((question) => ask("POST /api/preview", { in: question }), (answer) => this.#settle(answer), (err) => this.#failed(err));
	constructor(id) {
		this.id = id;
		this.choices = settingsOf(id);
		if (this.#channel) this.#channel.onmessage = (e) => this.#elsewhere(e.data);
		this.open();
	}
	/** close ends all that goes on. */
	close() {
		clearTimeout(this.#timer);
		this.#quick.forget();
		this.#careful.forget();
		this.#full.forget();
		this.#channel?.close();
	}
	/** open reads the sheet as it is stored. */
	async open() {
		try {
			this.sheet.value = await ask("GET /api/sheets/{id}", { path: { id: this.id } });
			this.settle();
			this.readings.value = (await ask("GET /api/sheets/{id}/readings", { path: { id: this.id } })).readings;
		} catch (err) {
			this.#failed(err);
		}
	}
	/** reading returns a force in N read off a scale at a place of the travel in m, as the machine is set. */
	reading(travel, force) {
		return {
			travel,
			force,
			plus: 0,
			settings: this.choices.value,
			note: ""
		};
	}
	/** weigh stores the forces read off a scale. */
	async weigh(readings) {
		try {
			const kept = await ask("PUT /api/sheets/{id}/readings", {
				path: { id: this.id },
				in: { readings }
			});
			this.readings.value = kept.readings;
		} catch (err) {
			this.#failed(err);
		}
	}
	/** look says how the machine is set: with every pose, or quickly with only the one it stands in and no band. */
	look(every) {
		return {
			settings: this.choices.value,
			frames: every ? "all" : "one",
			share: this.share.value,
			imperial: pounds.value,
			...every ? {
				structure: true,
				tempo: this.tempo.value,
				...who()
			} : {
				noBand: true,
				positions: quickPositions
			}
		};
	}
	/** settle asks for the stored machine with every pose. */
	settle() {
		clearTimeout(this.#timer);
		this.#full.ask({
			sheet: this.id,
			look: this.look(true)
		});
	}
	/** attempt shows what edits would do, and stores nothing. Since is when the finger moved, for timing. */
	attempt(edits, since = performance.now()) {
		this.edits.value = edits;
		this.#quick.ask({
			ask: {
				sheet: this.id,
				edits,
				look: this.look(false)
			},
			since
		});
		this.#later(() => this.#careful.ask({
			sheet: this.id,
			edits,
			look: {
				...this.look(false),
				noBand: false,
				...who()
			}
		}));
	}
	/** trySheet shows what a whole text would do, and stores nothing. */
	trySheet(text) {
		this.#quick.ask({
			ask: {
				text,
				look: {
					...this.look(false),
					structure: true
				}
			},
			since: performance.now()
		});
	}
	/** drop goes back to what is stored. */
	drop() {
		clearTimeout(this.#timer);
		this.#quick.forget();
		r(() => {
			this.edits.value = [];
			this.trial.value = null;
			this.problems.value = this.settled.value?.problems ?? [];
		});
	}
	/** choose sets a setting, at once and with every pose soon after. */
	choose(setting, value) {
		const isDefault = (this.shown.value?.structure?.settings ?? this.settled.value?.structure?.settings)?.find((s) => s.name === setting)?.default === value;
		const rest = this.choices.value.filter((c) => c.setting !== setting);
		remember(this.id, isDefault ? rest : [...rest, {
			setting,
			value
		}]);
		this.#quick.ask({
			ask: {
				sheet: this.id,
				edits: this.edits.value,
				look: this.look(false)
			},
			since: performance.now()
		});
		this.#later(() => this.settle());
	}
	/** usual sets everything as it usually stands. */
	usual() {
		remember(this.id, []);
		this.settle();
	}
	/** again asks anew, after units or tempo have changed. */
	again() {
		this.#later(() => this.settle());
	}
	/** keep stores the edits. What cannot be used is not stored. */
	keep(edits) {
		this.#quick.forget();
		this.#careful.forget();
		this.#write((revision) => ask("PATCH /api/sheets/{id}", {
			path: { id: this.id },
			in: {
				revision,
				edits,
				look: this.look(true)
			}
		}));
	}
	/** rewrite stores a whole text. */
	rewrite(text, from = this.sheet.value?.revision ?? 0) {
		this.#write(() => ask("PUT /api/sheets/{id}", {
			path: { id: this.id },
			in: {
				revision: from,
				text,
				look: this.look(true)
			}
		}));
	}
	undo() {
		this.#write((revision) => ask("POST /api/sheets/{id}/undo", {
			path: { id: this.id },
			in: {
				revision,
				look: this.look(true)
			}
		}));
	}
	redo() {
		this.#write((revision) => ask("POST /api/sheets/{id}/redo", {
			path: { id: this.id },
			in: {
				revision,
				look: this.look(true)
			}
		}));
	}
	/** mine ends a conflict by storing this side's text over the other's. */
	mine() {
		const c = this.conflict.value;
		this.conflict.value = null;
		if (c) this.rewrite(c.yours, c.current.revision);
	}
	/** theirs ends a conflict by taking the other side's text. */
	theirs() {
		this.conflict.value = null;
		this.open();
	}
	/** #later does it when nothing has changed for a while. */
	#later(act) {
		clearTimeout(this.#timer);
		this.#timer = window.setTimeout(act, settleAfter);
	}
	/** #write lets one write follow the other, each from the revision the one before left. */
	#write(send) {
		clearTimeout(this.#timer);
		this.#full.forget();
		this.saving.value = true;
		this.#writing = this.#writing.then(async () => {
			try {
				this.#saved(await send(this.sheet.value?.revision ?? 0));
			} catch (err) {
				this.drop();
				this.#failed(err);
				this.settle();
			} finally {
				this.saving.value = false;
			}
		});
	}
	#saved(saved) {
		r(() => {
			this.sheet.value = saved.sheet;
			this.notice.value = saved.merged;
			this.trouble.value = null;
			this.edits.value = [];
			if (saved.preview) this.#settle(saved.preview);
		});
		if (!saved.preview) this.settle();
		this.#channel?.postMessage({
			id: this.id,
			revision: saved.sheet.revision
		});
	}
	#settle(answer) {
		if (answer.problems.some((p) => p.path === "settings") && this.choices.value.length) {
			this.notice.value = words.machine.settingsGone;
			this.usual();
			return;
		}
		r(() => {
			this.problems.value = answer.problems;
			if (answer.curve || !this.settled.value) this.settled.value = answer;
			else this.settled.value = {
				...this.settled.value,
				text: answer.text,
				problems: answer.problems
			};
			if (!this.edits.value.length) this.trial.value = null;
		});
	}
	#tried(answer, since) {
		r(() => {
			this.problems.value = answer.problems;
			const structure = answer.structure ?? this.settled.value?.structure ?? null;
			if (answer.curve) this.trial.value = {
				...answer,
				structure
			};
		});
		if (since !== void 0) painted(since);
	}
	#failed(err) {
		const problem = troubleOf(err);
		r(() => {
			if (problem.code === "conflict" && problem.current) {
				this.conflict.value = {
					yours: problem.yours ?? "",
					current: problem.current
				};
				this.sheet.value = problem.current;
			} else if (problem.problems?.length) this.problems.value = problem.problems;
			else this.trouble.value = problem;
		});
	}
	/** #elsewhere hears that another page of this browser has stored a sheet. */
	#elsewhere(told) {
		if (told.id !== this.id || told.revision <= (this.sheet.value?.revision ?? 0)) return;
		if (this.edits.value.length || this.saving.value) return;
		this.notice.value = words.machine.changedElsewhere;
		this.open();
	}
};
// src/state/player.ts
/** Plays the stroke at its tempo. */
var Player = class {
	bench;
	playing = y$1(false);
	#frame = 0;
	#since = 0;
	constructor(bench) {
		this.bench = bench;
		this.stopWatching = x(() => {
			if (!this.bench.settled.value?.stroke) this.pause();
		});
	}
	stopWatching;
	toggle() {
		if (this.playing.value) this.pause();
		else this.play();
	}
	play() {
		if (!this.bench.settled.value?.stroke) return;
		this.playing.value = true;
		this.#since = performance.now();
		this.#next();
	}
	pause() {
		cancelAnimationFrame(this.#frame);
		this.playing.value = false;
	}
	close() {
		this.pause();
		this.stopWatching();
	}
	#next() {
		this.#frame = requestAnimationFrame((now) => {
			const { stroke, curve } = this.bench.settled.value ?? {};
			if (!this.playing.value || !stroke || !curve) return;
			this.bench.share.value = travelAt(stroke, Math.max(0, now - this.#since) / 1e3) / (curve.travel.at(-1) || 1);
			this.#next();
		});
	}
};
// src/drawing/homography.ts
/** product returns a·b: b is done first. */
function product(a, b) {
	const out = [];
	for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) out.push(a[3 * i] * b[j] + a[3 * i + 1] * b[3 + j] + a[3 * i + 2] * b[6 + j]);
	return out;
}
/** matrix3d writes the mapping as a CSS transform about the upper left corner. */
function matrix3d(m) {
	const [a, b, c, d, e, f, g, h, i] = m.map((x) => x / m[8]);
	return `matrix3d(${[
		a,
		d,
		0,
		g,
		b,
		e,
		0,
		h,
		0,
		0,
		1,
		0,
		c,
		f,
		0,
		i
	].join(",")})`;
}
// src/screens/machine/backdrop.tsx
function Backdrop({ sheet, view }) {
	const b = sheet?.backdrop;
	if (!b) return null;
	const onto = product([
		view.scale,
		0,
		view.origin[0],
		0,
		-view.scale,
		view.origin[1],
		0,
		0,
		1
	], b.plane);
	return /* @__PURE__ */ a("div", {
		class: "backdrop",
		"aria-hidden": "true",
		children: /* @__PURE__ */ a("img", {
			src: addressOf("GET /api/photos/{id}", { id: b.photo.id }),
			alt: "",
			width: b.photo.width,
			height: b.photo.height,
			style: { transform: matrix3d(onto) }
		})
	});
}
// src/screens/machine/handlemarks.tsx
var nudge = .001;
var stride = .01;
var ways = {
	ArrowRight: [1, 0],
	ArrowLeft: [-1, 0],
	ArrowUp: [0, 1],
	ArrowDown: [0, -1]
};
function HandleMarks({ bench, handles, held, view }) {
	return /* @__PURE__ */ a("g", {
		class: "handles",
		children: [handles.map((h) => /* @__PURE__ */ a(Mark, {
			bench,
			handle: h,
			held,
			view
		}, h.key)), held.value && /* @__PURE__ */ a(Reading, {
			held: held.value,
			view
		})]
	});
}
function Mark({ bench, handle, held, view }) {
	const mine = held.value?.handle.key === handle.key ? held.value : null;
	const place = mine?.to ?? handle.at;
	const at = onScreen(view, place);
	const u = units.value;
	const press = (e) => {
		const way = ways[e.key];
		const to = mine?.to ?? handle.at;
		if (way) {
			e.preventDefault();
			const by = e.shiftKey ? stride : nudge;
			const driver = bench.shown.value?.curve?.driver[bench.position.value] ?? 0;
			const next = [to[0] + way[0] * by, to[1] + way[1] * by];
			held.value = {
				handle: mine?.handle ?? handle,
				to: next,
				touch: false
			};
			bench.attempt([handle.edit(next, driver)], e.timeStamp);
		} else if (e.key === "Escape" && mine) {
			held.value = null;
			bench.drop();
		} else if (e.key === "Enter" && mine) keep();
	};
	const keep = () => {
		if (!mine) return;
		held.value = null;
		if (bench.problems.value.length) bench.drop();
		else if (bench.edits.value.length) bench.keep(bench.edits.value);
	};
	return /* @__PURE__ */ a("g", {
		class: `handle ${handle.kind}${mine ? " held" : ""}${mine && bench.problems.value.length ? " bad" : ""}`,
		tabindex: 0,
		role: "button",
		"aria-roledescription": words.machine.movable,
		"aria-label": words.machine.handle(handle.name, lengthText(u, place[0]), lengthText(u, place[1])),
		onKeyDown: press,
		onBlur: keep,
		"data-handle": handle.key,
		children: [/* @__PURE__ */ a("circle", {
			class: "reach",
			cx: at[0],
			cy: at[1],
			r: 22
		}), /* @__PURE__ */ a("circle", {
			class: "ring",
			cx: at[0],
			cy: at[1],
			r: handle.kind === "vertex" ? 5 : 8
		})]
	});
}
/** Reading tells where the held point is. */
function Reading({ held, view }) {
	const at = onScreen(view, held.to);
	const u = units.value;
	return /* @__PURE__ */ a("text", {
		class: "halo reading",
		x: at[0] + 14,
		y: at[1] - 14,
		children: [
			held.handle.name,
			" ",
			lengthText(u, held.to[0]),
			", ",
			lengthText(u, held.to[1])
		]
	});
}
// src/screens/machine/handles.ts
/** handlesOf lists the points and traced cam vertices where they are in the frame. */
function handlesOf(s, d, f) {
	const linkOf = (name) => d.links.findIndex((l) => l.name === name);
	const place = (link, p) => f.poses[link] ? moved(f.poses[link])(p) : p;
	const points = s.points.map((p) => {
		const link = p.fixed ? 0 : linkOf(p.links.find((name) => linkOf(name) > 0) ?? "");
		return {
			key: `point ${p.name}`,
			name: p.name,
			kind: "point",
			at: place(Math.max(0, link), p.at),
			edit: (to, driver) => ({ point: {
				point: p.name,
				to,
				driver
			} })
		};
	});
	return [...s.cams.flatMap((cam) => {
		const wheel = d.wheels.find((w) => w.cam && w.name === cam.name);
		return cam.points.map((p, i) => ({
			key: `cam ${cam.name} ${i + 1}`,
			name: `${cam.name} ${i + 1}`,
			kind: "vertex",
			at: place(wheel?.on ?? 0, p),
			edit: (to, driver) => ({ cam: {
				cam: cam.name,
				vertex: i + 1,
				to,
				driver
			} })
		}));
	}), ...points];
}
/** grabbed returns the handle nearest to the place within the reach, both in m; null if there is none. */
function grabbed(handles, at, reach) {
	let best = null;
	let least = reach;
	for (const h of handles) {
		const d = Math.hypot(h.at[0] - at[0], h.at[1] - at[1]) * (h.kind === "vertex" ? 1.15 : 1);
		if (d <= least) [best, least] = [h, d];
	}
	return best;
}
// src/screens/machine/view.ts
/** How large the machine and its ribbon are shown, and that it stays so while it is changed. */
/** ribbonShare is the greatest width of the ribbon over the lesser side of its picture. */
var ribbonShare = .19;
var edge = 20;
var foot = 16;
/** scalesFor fits the preview into the size. */
function scalesFor(p, size) {
	if (!p.curve || !p.drawing) return null;
	const ribbon = withPerson(ribbonOf(p.curve, "lifting", p.band), p.person);
	const full = ceiling(ribbon);
	const wide = ribbonShare * Math.min(size.width, size.height);
	const machine = {
		low: p.drawing.low,
		high: p.drawing.high
	};
	return {
		view: fitWith(around([
			machine.low,
			machine.high,
			...bodyCorners(p)
		]), ribbon, wide, full, {
			...size,
			height: size.height - foot
		}, edge),
		full,
		perNewton: wide / full
	};
}
/** bodyCorners lists the corners of the segments of the person in all poses. */
function bodyCorners(p) {
	return p.frames.flatMap((f) => (f.body?.segments ?? []).flatMap((s) => [...corners(s.from, s.near), ...corners(s.to, s.far)]));
}
var corners = (p, r) => [[p[0] - r, p[1] - r], [p[0] + r, p[1] + r]];
/** useScales returns the scales of the stored machine. They change only when they have to. */
function useScales(settled, size) {
	const kept = T(null);
	if (!settled || !size) return null;
	const before = kept.current;
	if (before && before.of === settled && before.size === size) return before.scales;
	const next = scalesFor(settled, size);
	if (!next) return before?.scales ?? null;
	const scales = before && before.size.width === size.width && before.size.height === size.height && near(before.scales, next, size) ? before.scales : next;
	kept.current = {
		scales,
		size,
		of: settled
	};
	return scales;
}
/** near reports whether a picture may stay as it is though a new one would be fitted otherwise. */
function near(before, next, size) {
	const wider = next.full / before.full;
	const larger = next.view.scale / before.view.scale;
	const middle = [(size.width / 2 - next.view.origin[0]) / next.view.scale, (next.view.origin[1] - size.height / 2) / next.view.scale];
	const off = distance(onScreen(before.view, middle), [size.width / 2, size.height / 2]);
	return wider > .4 && wider < 1.5 && larger > .93 && larger < 1.25 && off < .08 * Math.min(size.width, size.height);
}
// src/screens/machine/board.tsx
/** The drawing board: the side view, moved along its stroke or altered under the finger. */
var mode = y$1("work");
var layers = kept("layers", [
	"arms",
	"forces",
	"names",
	"band",
	"ghost"
]);
var fingertip = 26;
var nearPath = 70;
var wheelStep = .0016;
function Board$1({ bench }) {
	const [ref, size] = useSize();
	return /* @__PURE__ */ a("div", {
		class: `board-drawing mode-${mode.value}`,
		ref,
		children: size && size.height > 40 && /* @__PURE__ */ a(Drawn, {
			bench,
			size
		})
	});
}
function Drawn({ bench, size }) {
	const svg = T(null);
	const camera = useSignal(null);
	const held = useSignal(null);
	const shown = bench.shown.value;
	const scales = useScales(bench.settled.value, size);
	const frame = bench.frame.value;
	const fitted = scales?.view ?? null;
	const view = camera.value ?? fitted;
	const structure = shown?.structure;
	const drawing = shown?.drawing ?? bench.settled.value?.drawing;
	const handles = w$2(() => structure && drawing && frame ? handlesOf(structure, drawing, frame) : [], [
		structure,
		drawing,
		frame
	]);
	const touched = T(null);
	touched.current = touching({
		bench,
		view,
		fitted,
		handles,
		camera,
		held
	});
	const there = view !== null;
	A$1(() => svg.current && there ? fingers(svg.current, () => touched.current) : void 0, [there]);
	if (!view || !fitted || !scales || !frame || !drawing || !shown?.curve) return /* @__PURE__ */ a("p", {
		class: "board-wait faint",
		children: words.loading
	});
	const settled = bench.settled.value;
	const person = shown.person ?? null;
	const body = frame.body ?? settled?.frames.find((f) => f.position === frame.position)?.body ?? null;
	const stage = {
		drawing,
		frame,
		laid: {
			ribbon: withPerson(ribbonOf(shown.curve, "lifting", shown.band), person),
			view,
			perNewton: scales.perNewton,
			full: scales.full * 2.2
		},
		view,
		size,
		units: units.value
	};
	const show = /* @__PURE__ */ new Set(["ribbon", ...layers.value]);
	const trail = bench.trial.value ? [] : shown.frames;
	const turn = (e) => {
		e.preventDefault();
		const box = svg.current.getBoundingClientRect();
		const at = [e.clientX - box.left, e.clientY - box.top];
		camera.value = within(zoomed(view, at, Math.exp(-e.deltaY * wheelStep)), fitted, at);
	};
	return /* @__PURE__ */ a($, { children: [
		/* @__PURE__ */ a(Backdrop, {
			sheet: bench.sheet.value,
			view
		}),
		/* @__PURE__ */ a("svg", {
			ref: svg,
			class: "drawing",
			width: size.width,
			height: size.height,
			viewBox: `0 0 ${size.width} ${size.height}`,
			role: "group",
			"aria-label": shown.name,
			onWheel: turn,
			children: [
				/* @__PURE__ */ a("g", {
					id: "machine-figure",
					children: /* @__PURE__ */ a(Figure, {
						stage,
						show,
						id: "unsure",
						trail,
						...body && trainee.value ? { body: {
							shape: body,
							stale: !frame.body
						} } : {},
						...person?.sticking !== null && person?.sticking !== void 0 ? { sticking: person.sticking } : {}
					})
				}),
				mode.value === "alter" && /* @__PURE__ */ a(HandleMarks, {
					bench,
					handles,
					held,
					view
				}),
				held.value?.touch && /* @__PURE__ */ a(Loupe, {
					at: onScreen(view, held.value.to),
					size,
					of: "machine-figure"
				})
			]
		}),
		camera.value && /* @__PURE__ */ a("button", {
			type: "button",
			class: "fit",
			onClick: () => camera.value = null,
			children: words.machine.fit
		}),
		/* @__PURE__ */ a(Rule, {
			view,
			perNewton: scales.perNewton
		})
	] });
}
/** Rule tells the scale of lengths and of the ribbon's width. */
function Rule({ view, perNewton }) {
	const u = units.value;
	const long = u.imperial ? 12 * .0254 : .2;
	const newtons = u.imperial ? 50 * u.force.perUnit : 100;
	return /* @__PURE__ */ a("p", {
		class: "rule-line",
		"aria-hidden": "true",
		children: [
			/* @__PURE__ */ a("svg", {
				width: Math.max(4, long * view.scale),
				height: "8",
				children: /* @__PURE__ */ a("path", { d: `M.5 1V7M.5 4H${long * view.scale - .5}M${long * view.scale - .5} 1V7` })
			}),
			u.imperial ? "12 in" : "20 cm",
			/* @__PURE__ */ a("svg", {
				width: Math.max(4, newtons * perNewton),
				height: "8",
				class: "rule-force",
				children: /* @__PURE__ */ a("rect", {
					width: Math.max(4, newtons * perNewton),
					height: "8"
				})
			}),
			u.imperial ? "50 lbf" : "100 N"
		]
	});
}
/** touching says what fingers on the board do, as things stand. */
function touching(t) {
	return {
		hold(at, e) {
			if (!t.view) return still;
			if (mode.value === "alter") {
				const handle = grabbed(t.handles, onGround(t.view, at), fingertip / t.view.scale);
				if (handle) return holdHandle(t, handle, at, e);
			} else if (pathDistance(t, at) < nearPath) return holdContact(t, at);
			return holdPaper(t, at);
		},
		pinch(from, to) {
			if (!t.view || !t.fitted) return;
			t.camera.value = within(pinched(t.camera.value ?? t.view, from, to), t.fitted, to[0]);
		}
	};
}
var still = {
	move() {},
	end() {},
	cancel() {}
};
/** holdHandle drags a point or vertex; what it would change is shown at once and kept when it is let go. */
function holdHandle(t, handle, from, e) {
	const { bench, held } = t;
	const view = t.view;
	const driver = bench.shown.value?.curve?.driver[bench.position.value] ?? 0;
	const offset = sub(onScreen(view, handle.at), from);
	let edits = [];
	held.value = {
		handle,
		to: handle.at,
		touch: e.pointerType !== "mouse"
	};
	return {
		move(at, e) {
			const to = onGround(view, [at[0] + offset[0], at[1] + offset[1]]);
			held.value = {
				handle,
				to,
				touch: e.pointerType !== "mouse"
			};
			edits = [handle.edit(to, driver)];
			bench.attempt(edits, e.timeStamp);
		},
		end() {
			held.value = null;
			if (!edits.length) return;
			if (bench.problems.value.length) bench.drop();
			else bench.keep(edits);
		},
		cancel() {
			held.value = null;
			bench.drop();
		}
	};
}
function pathDistance(t, at) {
	const contact = t.bench.shown.value?.curve?.contact ?? [];
	return Math.min(...contact.map((p) => distanceTo(t.view, p, at)), Number.POSITIVE_INFINITY);
}
function distanceTo(view, p, at) {
	const q = onScreen(view, p);
	return Math.hypot(q[0] - at[0], q[1] - at[1]);
}
/** holdContact moves the machine along its stroke. */
function holdContact(t, from) {
	const { bench } = t;
	const before = bench.share.value;
	const follow = (at) => {
		const curve = bench.shown.value?.curve;
		if (!curve) return;
		let best = 0;
		let least = Number.POSITIVE_INFINITY;
		curve.contact.forEach((p, k) => {
			const d = distanceTo(t.view, p, at);
			if (d < least) [best, least] = [k, d];
		});
		bench.share.value = curve.travel[best] / (curve.travel.at(-1) || 1);
	};
	follow(from);
	return {
		move: follow,
		end() {},
		cancel() {
			bench.share.value = before;
		}
	};
}
/** holdPaper shifts the view. */
function holdPaper(t, from) {
	const before = t.camera.value;
	const view = t.view;
	return {
		move(at) {
			const by = sub(at, from);
			if (t.camera.value || Math.hypot(...by) > 4) t.camera.value = panned(view, by);
		},
		end() {},
		cancel() {
			t.camera.value = before;
		}
	};
}
// src/screens/machine/conflict.tsx
/** Two pages have changed one machine: the person says which change stays. */
var most$1 = 8;
function ConflictDialog({ bench, conflict }) {
	const ref = T(null);
	A$1(() => ref.current?.showModal(), []);
	const { yours, current } = conflict;
	return /* @__PURE__ */ a("dialog", {
		ref,
		class: "conflict",
		"aria-labelledby": "conflict-title",
		onCancel: (e) => e.preventDefault(),
		children: [
			/* @__PURE__ */ a("h2", {
				id: "conflict-title",
				children: words.machine.conflictTitle
			}),
			/* @__PURE__ */ a("p", { children: words.machine.conflict }),
			/* @__PURE__ */ a("h3", { children: words.machine.differs }),
			/* @__PURE__ */ a("pre", {
				tabIndex: 0,
				"aria-label": words.machine.differs,
				children: [onlyIn(current.text, yours).map((l) => `− ${l}\n`), onlyIn(yours, current.text).map((l) => `+ ${l}\n`)]
			}),
			/* @__PURE__ */ a("div", {
				class: "row",
				children: [/* @__PURE__ */ a("button", {
					type: "button",
					class: "strong",
					onClick: () => bench.mine(),
					disabled: !yours,
					children: words.machine.mine
				}), /* @__PURE__ */ a("button", {
					type: "button",
					onClick: () => bench.theirs(),
					children: words.machine.theirs
				})]
			})
		]
	});
}
/** onlyIn returns the lines of a that b has not, up to the most that are shown. */
function onlyIn(a, b) {
	const there = new Set(b.split("\n"));
	return a.split("\n").filter((line) => !there.has(line)).slice(0, most$1);
}
// src/parts/scroll.tsx
function Scroll({ label, children }) {
	return /* @__PURE__ */ a("section", {
		class: "scroll",
		tabIndex: 0,
		"aria-label": label,
		children
	});
}
// src/screens/machine/curve.tsx
var numbers$1 = (column) => column.map((f) => f ?? NaN);
function CurveView({ bench }) {
	const shown = bench.shown.value;
	const curve = shown?.curve;
	if (!curve) return null;
	const before = bench.trial.value ? bench.settled.value?.curve : null;
	const band = layers.value.includes("band") ? shown.band : null;
	const series = seriesOf(curve, before ?? null, band?.phase === "holding", shown.person);
	const entries = series.map((s) => ({
		name: s.name,
		look: s.look
	}));
	if (band) entries.push({
		name: band.phase === "lifting" ? words.chart.band : words.chart.holdBand,
		look: "chart-band"
	});
	const set = JSON.stringify(bench.choices.value);
	const crosses = bench.readings.value.filter((r) => JSON.stringify(r.settings) === set).map((r) => ({
		x: r.travel,
		y: r.force
	}));
	if (crosses.length) entries.push({
		name: words.scale.legend,
		look: "cross"
	});
	return /* @__PURE__ */ a("div", {
		class: "curve-view",
		children: [/* @__PURE__ */ a(Chart, {
			series,
			band: band ? {
				low: numbers$1(band.low),
				high: numbers$1(band.high)
			} : null,
			crosses,
			cursor: {
				x: curve.travel[bench.position.value] ?? 0,
				readings: [curve.lift[bench.position.value] ?? null]
			},
			length: Math.max(curve.travel.at(-1) ?? 0, before?.travel.at(-1) ?? 0),
			most: (shown.person ? 1.6 : 1.1) * ceiling(ribbonOf(curve, "lifting", band)),
			...axesOf(units.value),
			label: words.chart.label(shown.name),
			scrub: (share) => bench.share.value = share
		}), entries.length > 1 && /* @__PURE__ */ a(Legend, { entries })]
	});
}
function seriesOf(curve, before, holding, person) {
	const out = [{
		name: words.phases.lifting,
		look: "lift",
		x: curve.travel,
		y: numbers$1(curve.lift)
	}];
	const friction = curve.rubs && layers.value.includes("friction");
	const line = (name, look, column) => ({
		name,
		look,
		x: curve.travel,
		y: numbers$1(column)
	});
	if (friction) out.push(line(words.phases.lowering, "lower", curve.lower));
	if (curve.rubs && (friction || holding)) out.push(line(words.phases.holding, "hold", curve.hold));
	if (person) out.push(line(words.person.canLabel, "can", person.can));
	if (before) out.push({
		name: words.chart.before,
		look: "before",
		x: before.travel,
		y: numbers$1(before.lift)
	});
	return out;
}
/** CurveTable is the curve for those who cannot see it or want the numbers. */
function CurveTable({ bench }) {
	const curve = bench.settled.value?.curve;
	if (!curve) return null;
	const band = bench.settled.value.band;
	const rows = Array.from({ length: 11 }, (_, i) => at$1(curve.travel, i / 10));
	return /* @__PURE__ */ a("details", {
		class: "curve-table",
		children: [/* @__PURE__ */ a("summary", { children: words.chart.table }), /* @__PURE__ */ a(Scroll, {
			label: words.chart.table,
			children: /* @__PURE__ */ a("table", { children: [/* @__PURE__ */ a("thead", { children: /* @__PURE__ */ a("tr", { children: Object.values(words.chart.columns).map((name) => /* @__PURE__ */ a("th", {
				scope: "col",
				children: name
			}, name)) }) }), /* @__PURE__ */ a("tbody", { children: rows.map((k) => /* @__PURE__ */ a(Row, {
				curve,
				band,
				k
			}, k)) })] })
		})]
	});
}
function Row({ curve, band, k }) {
	const u = units.value;
	const newtons = (f) => f === null || f === void 0 ? "–" : force(u, f);
	return /* @__PURE__ */ a("tr", { children: [
		/* @__PURE__ */ a("th", {
			scope: "row",
			children: travel(u, curve.travel[k])
		}),
		/* @__PURE__ */ a("td", { children: newtons(curve.lift[k]) }),
		/* @__PURE__ */ a("td", { children: newtons(curve.hold[k]) }),
		/* @__PURE__ */ a("td", { children: newtons(curve.lower[k]) }),
		/* @__PURE__ */ a("td", { children: band ? `${newtons(band.low[k])} – ${newtons(band.high[k])}` : "–" }),
		/* @__PURE__ */ a("td", { children: curve.liftRatio[k] === null || curve.liftRatio[k] === void 0 ? "–" : ratio(curve.liftRatio[k]) })
	] });
}
// src/screens/machine/scale.tsx
/** Forces read off a hanging scale, beside what the sheet says. */
function ScaleReadings({ bench }) {
	const curve = bench.settled.value?.curve;
	if (!curve) return null;
	const here = curve.travel[at$1(curve.travel, bench.share.value)] ?? 0;
	const all = bench.readings.value;
	return /* @__PURE__ */ a("section", { children: [
		/* @__PURE__ */ a("h2", { children: words.scale.title }),
		/* @__PURE__ */ a("p", {
			class: "faint small",
			children: words.scale.lead
		}),
		/* @__PURE__ */ a("ul", {
			class: "helps",
			children: all.map((r, i) => /* @__PURE__ */ a("li", { children: [/* @__PURE__ */ a("span", { children: said(bench, r) }), /* @__PURE__ */ a("button", {
				type: "button",
				"aria-label": words.scale.remove(travel(units.value, r.travel)),
				onClick: () => void bench.weigh(all.filter((_, k) => k !== i)),
				children: words.scale.away
			})] }, `${r.travel} ${r.force} ${r.note}`))
		}),
		/* @__PURE__ */ a(Add, {
			here,
			add: (newtons) => void bench.weigh([...all, bench.reading(here, newtons)])
		})
	] });
}
/** said compares a reading with the force the sheet gives for the same place. */
function said(bench, r) {
	const u = units.value;
	const curve = bench.settled.value.curve;
	const place = travel(u, r.travel);
	const same = JSON.stringify(r.settings) === JSON.stringify(bench.choices.value);
	const model = curve.lift[at$1(curve.travel, r.travel / (curve.travel.at(-1) || 1))];
	if (!same || model == null) return words.scale.read(place, force(u, r.force));
	const off = `${fixed(100 * (r.force / model - 1), 0)} %`;
	return words.scale.compared(place, force(u, r.force), force(u, model), off);
}
function Add({ here, add }) {
	const u = units.value;
	const value = useSignal(0);
	return /* @__PURE__ */ a("div", {
		class: "row",
		children: [/* @__PURE__ */ a(Stepper, {
			label: words.scale.force(travel(u, here)),
			name: words.scale.force(travel(u, here)),
			unit: u.force.unit,
			value: value.value / u.force.perUnit,
			low: 0,
			high: 2e4,
			step: 1,
			change: (v) => {
				value.value = v * u.force.perUnit;
			}
		}), /* @__PURE__ */ a("button", {
			type: "button",
			disabled: !(value.value > 0),
			onClick: () => add(value.value),
			children: words.scale.add
		})]
	});
}
// src/screens/machine/stepped.ts
var steps = {
	mm: 1,
	cm: .1,
	m: .001,
	in: .125,
	ft: .01,
	kg: .5,
	g: 10,
	lb: 1,
	"°": 1,
	deg: 1,
	rad: .01,
	N: 1
};
/** stepOf returns by how much the value is stepped, in its own unit. */
function stepOf(v) {
	return steps[v.unit] ?? 10 ** Math.floor(Math.log10(Math.max(Math.abs(v.value), .001)) - 1);
}
/** stepped returns the text with its first number moved by so many steps; null if there is no plain number. */
function stepped(text, v, by) {
	const found = /[-\u2212+]?\d+(?:\.\d+)?/.exec(text);
	if (!found || /^\s*\d+\s+\d+\/|^\s*\d+\/\d/.test(text.slice(found.index))) return null;
	const step = stepOf(v);
	const now = Number(found[0].replace("−", "-"));
	const digits = Math.max(decimals(found[0]), decimals(String(step)));
	const next = Number((now + by * step).toFixed(digits));
	return text.slice(0, found.index) + String(next) + text.slice(found.index + found[0].length);
}
var decimals = (text) => (text.split(".")[1] ?? "").length;
// src/screens/machine/measure.tsx
/** Every number of the sheet, to be typed or stepped; the curve follows at once. */
var wanted$1 = y$1("");
function MeasurePane({ bench }) {
	const values = bench.settled.value?.structure?.values ?? [];
	const narrow = bench.settled.value?.band?.narrow;
	const shown = values.filter((v) => `${v.name} ${v.path}`.toLowerCase().includes(wanted$1.value.toLowerCase()));
	return /* @__PURE__ */ a("div", {
		class: "pane-body",
		children: [
			/* @__PURE__ */ a("p", {
				class: "faint",
				children: values.length ? words.measure.lead : words.measure.none
			}),
			narrow && /* @__PURE__ */ a("p", {
				class: "hint",
				children: words.measure.narrow(narrow.name, force(units.value, narrow.half), force(units.value, narrow.without))
			}),
			values.length > 8 && /* @__PURE__ */ a("label", {
				class: "find",
				children: [/* @__PURE__ */ a("span", { children: words.measure.find }), /* @__PURE__ */ a("input", {
					type: "search",
					value: wanted$1.value,
					onInput: (e) => wanted$1.value = e.currentTarget.value
				})]
			}),
			/* @__PURE__ */ a(ScaleReadings, { bench }),
			grouped(shown).map(([group, members]) => /* @__PURE__ */ a("section", {
				class: "values",
				children: [/* @__PURE__ */ a("h2", { children: words.measure.groups[group] ?? words.measure.other }), members.map((v) => /* @__PURE__ */ a(ValueRow, {
					value: v,
					bench
				}, v.path))]
			}, group))
		]
	});
}
/** grouped parts the values by the first key of their paths, in the sheet's order. */
function grouped(values) {
	const out = /* @__PURE__ */ new Map();
	for (const v of values) {
		const group = /^[^.[]*/.exec(v.path)[0];
		const members = out.get(group);
		if (members) members.push(v);
		else out.set(group, [v]);
	}
	return [...out];
}
function ValueRow({ value: v, bench }) {
	const [typed, setTyped] = d$2(null);
	const input = T(null);
	const text = typed ?? v.text;
	const attempt = (next) => {
		setTyped(next);
		bench.attempt([{ value: {
			path: v.path,
			text: next
		} }]);
	};
	const keep = () => {
		if (typed === null) return;
		setTyped(null);
		if (typed.trim() === v.text) bench.drop();
		else if (!bench.problems.value.length) bench.keep([{ value: {
			path: v.path,
			text: typed
		} }]);
		else {
			bench.notice.value = `${words.machine.cannot} ${bench.problems.value[0].message}`;
			bench.drop();
		}
	};
	const step = (by) => {
		const next = stepped(typed ?? v.text, v, by);
		if (next !== null) attempt(next);
	};
	const key = (e) => {
		if (e.key === "Enter") keep();
		if (e.key === "Escape") {
			setTyped(null);
			bench.drop();
		}
		if (e.key === "ArrowUp" || e.key === "ArrowDown") {
			e.preventDefault();
			step((e.key === "ArrowUp" ? 1 : -1) * (e.shiftKey ? 10 : 1));
		}
	};
	const leave = (e) => {
		if (!e.currentTarget.contains(e.relatedTarget)) keep();
	};
	const bad = typed !== null && bench.problems.value.length > 0;
	return /* @__PURE__ */ a("div", {
		class: "value",
		onBlurCapture: leave,
		children: [
			/* @__PURE__ */ a("span", {
				class: "value-name",
				children: [v.name, /* @__PURE__ */ a(Aside, { value: v })]
			}),
			/* @__PURE__ */ a("div", {
				class: "stepper-row",
				children: [
					/* @__PURE__ */ a("button", {
						type: "button",
						class: "square",
						"aria-label": words.measure.less(v.name),
						onClick: () => step(-1),
						children: "−"
					}),
					/* @__PURE__ */ a("input", {
						ref: input,
						type: "text",
						class: typed === null ? "" : "changed",
						"aria-label": v.name,
						"aria-invalid": bad,
						value: text,
						onInput: (e) => attempt(e.currentTarget.value),
						onKeyDown: key
					}),
					/* @__PURE__ */ a("button", {
						type: "button",
						class: "square",
						"aria-label": words.measure.more(v.name),
						onClick: () => step(1),
						children: "+"
					})
				]
			}),
			bad && /* @__PURE__ */ a(ProblemList, { problems: bench.problems.value.slice(0, 2) })
		]
	});
}
/** Aside tells the value in the reader's units where the sheet has others, how it was measured, and what sets it. */
function Aside({ value: v }) {
	const u = units.value;
	const si = v.value / (v.perSI || 1);
	const parts = [];
	if (u.imperial !== /^(in|ft|lb)/.test(v.unit)) {
		if (v.quantity === "length") parts.push(lengthText(u, si));
		if (v.quantity === "mass") parts.push(mass(u, si));
	}
	if (v.how) parts.push(v.how);
	if (v.setting) parts.push(words.measure.set(v.setting));
	return parts.length ? /* @__PURE__ */ a("span", {
		class: "faint small",
		children: [" ", parts.join(" · ")]
	}) : null;
}
// src/screens/machine/effort.ts
/** axesOfEffort returns the axes of effort in percent over a travel. */
var axesOfEffort = (u) => ({
	x: {
		...u.travel,
		title: words.chart.travel(u.travel.unit)
	},
	y: {
		perUnit: .01,
		unit: "%",
		title: words.person.effortAxis
	}
});
// src/screens/machine/person.tsx
var numbers = (column) => column.map((f) => f ?? NaN);
function PersonPane({ bench }) {
	const shown = bench.shown.value;
	const settled = bench.settled.value;
	const person = shown?.person ?? settled?.person;
	if (!person) return /* @__PURE__ */ a("p", {
		class: "pane-body",
		children: settled?.personGap ? words.person.off(settled.personGap) : words.loading
	});
	return /* @__PURE__ */ a("div", {
		class: "pane-body prose",
		children: [
			person.words.map((w, i) => /* @__PURE__ */ a("p", {
				class: i === 0 ? "first" : "",
				children: w
			}, w)),
			/* @__PURE__ */ a(EffortChart, {
				bench,
				person
			}),
			/* @__PURE__ */ a(Helps, {
				bench,
				person
			}),
			person.maximum && person.maximum.load > 0 && /* @__PURE__ */ a("p", { children: [
				/* @__PURE__ */ a("strong", { children: [words.person.maximum, ":"] }),
				" ",
				words.person.maximumText(mass(units.value, person.maximum.load), mass(units.value, person.maximum.low), mass(units.value, person.maximum.high))
			] }),
			/* @__PURE__ */ a(Muscles, { muscles: person.muscles }),
			person.warnings.length > 0 && /* @__PURE__ */ a($, { children: [/* @__PURE__ */ a("h2", { children: words.person.warnings }), /* @__PURE__ */ a("ul", { children: person.warnings.map((w) => /* @__PURE__ */ a("li", { children: w }, w)) })] }),
			/* @__PURE__ */ a("section", {
				class: "care",
				children: [/* @__PURE__ */ a("h2", { children: words.why.care }), /* @__PURE__ */ a("ul", { children: person.cautions.map((c) => /* @__PURE__ */ a("li", { children: c }, c)) })]
			})
		]
	});
}
function EffortChart({ bench, person }) {
	const travel = (bench.shown.value?.person ? bench.shown.value : bench.settled.value)?.curve?.travel;
	if (!travel) return null;
	const k = at$1(travel, bench.share.value);
	const joints = person.joints.filter((j) => j.effort.some((e) => e !== null)).slice(0, 5);
	const series = [{
		name: words.person.hardest,
		look: "lift",
		x: travel,
		y: numbers(person.effort)
	}, ...joints.map((j, i) => ({
		name: j.joint,
		look: `series-${i + 2}`,
		x: travel,
		y: numbers(j.effort)
	}))];
	const band = bandOf(joints, person, travel.length);
	const percentAt = (column) => column[k] == null ? "–" : percent(column[k]);
	return /* @__PURE__ */ a($, { children: [
		/* @__PURE__ */ a(Chart, {
			series,
			band,
			cursor: {
				x: travel[k] ?? 0,
				readings: [person.effort[k] ?? null]
			},
			length: travel.at(-1) ?? 0,
			most: Math.max(...numbers(person.effort).filter((e) => !Number.isNaN(e)), .5) * 1.6,
			...axesOfEffort(units.value),
			label: words.person.effortLabel(person.name),
			scrub: (share) => {
				bench.share.value = share;
			}
		}),
		/* @__PURE__ */ a(Legend, { entries: [{
			name: words.person.hardest,
			look: "lift",
			reading: percentAt(person.effort)
		}, ...joints.map((j, i) => ({
			name: j.weak ? `${j.joint} *` : j.joint,
			look: `series-${i + 2}`,
			reading: percentAt(j.effort)
		}))] }),
		joints.some((j) => j.weak) && /* @__PURE__ */ a("p", {
			class: "faint small",
			children: ["* ", words.person.weak]
		})
	] });
}
/** bandOf returns the band of the hardest joint at each position. */
function bandOf(joints, person, n) {
	const pick = (side) => Array.from({ length: n }, (_, k) => joints.find((j) => j.joint === person.limiter[k])?.[side][k] ?? NaN);
	return {
		low: pick("low"),
		high: pick("high")
	};
}
function Helps({ bench, person }) {
	if (!person.helps.length) return null;
	return /* @__PURE__ */ a($, { children: [/* @__PURE__ */ a("h2", { children: words.person.helps }), /* @__PURE__ */ a("ul", {
		class: "helps",
		children: person.helps.map((h) => /* @__PURE__ */ a("li", { children: [/* @__PURE__ */ a("span", { children: h.words }), /* @__PURE__ */ a("button", {
			type: "button",
			onClick: () => bench.choose(h.setting, h.value),
			children: words.person.set(h.setting, h.value)
		})] }, `${h.setting} ${h.value}`))
	})] });
}
function Muscles({ muscles }) {
	if (!muscles.length) return null;
	return /* @__PURE__ */ a($, { children: [
		/* @__PURE__ */ a("h2", { children: words.person.muscles }),
		/* @__PURE__ */ a("p", {
			class: "faint small",
			children: words.person.musclesHint
		}),
		/* @__PURE__ */ a(Scroll, {
			label: words.person.muscles,
			children: /* @__PURE__ */ a("table", {
				class: "muscles",
				children: [/* @__PURE__ */ a("thead", { children: /* @__PURE__ */ a("tr", { children: [/* @__PURE__ */ a("th", {
					scope: "col",
					children: words.person.muscle
				}), words.thirds.map((t) => /* @__PURE__ */ a("th", {
					scope: "col",
					children: t
				}, t))] }) }), /* @__PURE__ */ a("tbody", { children: muscles.map((m) => /* @__PURE__ */ a("tr", { children: [/* @__PURE__ */ a("th", {
					scope: "row",
					children: m.name
				}), m.mean.map((e, i) => /* @__PURE__ */ a("td", { children: e === null ? words.person.never : `${fixed(100 * e, 0)} %` }, words.thirds[i]))] }, m.name)) })]
			})
		})
	] });
}
// src/screens/machine/set.tsx
function SetPane({ bench }) {
	const settings = bench.settled.value?.structure?.settings ?? [];
	return /* @__PURE__ */ a("div", {
		class: "pane-body",
		children: [
			/* @__PURE__ */ a("p", {
				class: "faint",
				children: settings.length ? words.set.lead : words.set.none
			}),
			settings.map((s) => /* @__PURE__ */ a(SettingControl, {
				setting: s,
				bench
			}, s.name)),
			bench.choices.value.length > 0 && /* @__PURE__ */ a("button", {
				type: "button",
				onClick: () => bench.usual(),
				children: words.set.reset
			}),
			/* @__PURE__ */ a(TempoControl, { bench }),
			/* @__PURE__ */ a(LayerControl, {})
		]
	});
}
function SettingControl({ setting: s, bench }) {
	const chosen = bench.choices.value.find((c) => c.setting === s.name)?.value ?? s.default;
	const choose = (value) => bench.choose(s.name, value);
	const i = Math.max(0, s.values.indexOf(chosen));
	return /* @__PURE__ */ a("div", {
		class: "setting",
		children: [s.ranged && s.values.length > 1 ? /* @__PURE__ */ a("div", {
			class: "slider",
			children: [/* @__PURE__ */ a("span", {
				class: "setting-name",
				children: [
					s.name,
					" ",
					/* @__PURE__ */ a("strong", { children: chosen })
				]
			}), /* @__PURE__ */ a("div", {
				class: "slider-row",
				children: [
					/* @__PURE__ */ a("button", {
						type: "button",
						class: "square",
						"aria-label": words.set.less(s.name),
						disabled: i === 0,
						onClick: () => choose(s.values[i - 1]),
						children: "−"
					}),
					/* @__PURE__ */ a("input", {
						type: "range",
						min: "0",
						max: s.values.length - 1,
						step: "1",
						value: i,
						"aria-label": s.name,
						"aria-valuetext": chosen,
						onInput: (e) => choose(s.values[Number(e.currentTarget.value)])
					}),
					/* @__PURE__ */ a("button", {
						type: "button",
						class: "square",
						"aria-label": words.set.more(s.name),
						disabled: i === s.values.length - 1,
						onClick: () => choose(s.values[i + 1]),
						children: "+"
					})
				]
			})]
		}) : /* @__PURE__ */ a(Choice, {
			label: s.name,
			options: s.values.map((value) => ({
				value,
				name: value
			})),
			value: chosen,
			choose
		}), s.notes && /* @__PURE__ */ a("p", {
			class: "faint small",
			children: s.notes
		})]
	});
}
var tempoParts = Object.entries(words.machine.tempoParts);
function TempoControl({ bench }) {
	return /* @__PURE__ */ a("fieldset", {
		class: "tempo",
		children: [/* @__PURE__ */ a("legend", { children: [words.machine.tempo, " (s)"] }), /* @__PURE__ */ a("div", {
			class: "tempo-parts",
			children: tempoParts.map(([part, name]) => /* @__PURE__ */ a(Stepper, {
				label: `${words.machine.tempo}: ${name}`,
				name,
				value: bench.tempo.value[part],
				low: part === "up" || part === "down" ? .5 : 0,
				high: 10,
				step: .5,
				change: (value) => {
					bench.tempo.value = {
						...bench.tempo.value,
						[part]: value
					};
					bench.again();
				}
			}, part))
		})]
	});
}
var layerNames = Object.entries(words.machine.layers);
function LayerControl() {
	const on = layers.value;
	return /* @__PURE__ */ a("fieldset", {
		class: "layers",
		children: [/* @__PURE__ */ a("legend", { children: words.machine.show }), /* @__PURE__ */ a("div", {
			class: "ticks",
			children: layerNames.map(([layer, name]) => /* @__PURE__ */ a("label", { children: [/* @__PURE__ */ a("input", {
				type: "checkbox",
				checked: on.includes(layer),
				onChange: () => layers.value = on.includes(layer) ? on.filter((l) => l !== layer) : [...on, layer]
			}), /* @__PURE__ */ a("span", { children: name })] }, layer))
		})]
	});
}
// src/screens/machine/sheet.tsx
/** The sheet as text, with what needs mending told by line. */
function SheetPane({ bench }) {
	const stored = bench.sheet.value?.text ?? "";
	const [draft, setDraft] = d$2(null);
	const text = draft?.text ?? stored;
	const changed = draft !== null && draft.text !== stored;
	const keep = () => {
		if (!draft) return;
		bench.rewrite(draft.text, draft.from);
		setDraft(null);
	};
	return /* @__PURE__ */ a("div", {
		class: "pane-body sheet-pane",
		children: [
			/* @__PURE__ */ a("p", {
				class: "faint",
				children: words.sheet.lead
			}),
			bench.problems.value.length > 0 && /* @__PURE__ */ a("div", {
				class: "note warn",
				role: "alert",
				children: [/* @__PURE__ */ a("strong", { children: words.machine.problems(bench.problems.value.length) }), /* @__PURE__ */ a(ProblemList, { problems: bench.problems.value })]
			}),
			/* @__PURE__ */ a("textarea", {
				"aria-label": words.sheet.label,
				spellcheck: false,
				autocomplete: "off",
				rows: 24,
				value: text,
				onInput: (e) => setDraft({
					text: e.currentTarget.value,
					from: draft?.from ?? bench.sheet.value?.revision ?? 0
				})
			}),
			/* @__PURE__ */ a("div", {
				class: "row",
				children: [
					/* @__PURE__ */ a("button", {
						type: "button",
						class: "strong",
						disabled: !changed,
						onClick: keep,
						children: words.sheet.keep
					}),
					/* @__PURE__ */ a("button", {
						type: "button",
						disabled: !changed,
						onClick: () => bench.trySheet(text),
						children: words.sheet.try
					}),
					/* @__PURE__ */ a("button", {
						type: "button",
						disabled: !changed,
						onClick: () => {
							setDraft(null);
							bench.drop();
						},
						children: words.sheet.restore
					}),
					/* @__PURE__ */ a("span", {
						class: "faint",
						role: "status",
						children: changed ? words.sheet.changed : words.sheet.same
					})
				]
			})
		]
	});
}
// src/screens/machine/stroke.tsx
function StrokeBar({ bench, player }) {
	const playing = player.playing.value;
	const here = hereText(bench);
	return /* @__PURE__ */ a("div", {
		class: "stroke",
		children: [
			/* @__PURE__ */ a("button", {
				type: "button",
				class: "round",
				"aria-label": playing ? words.machine.pause : words.machine.play,
				disabled: !bench.settled.value?.stroke,
				onClick: () => player.toggle(),
				children: /* @__PURE__ */ a("svg", {
					viewBox: "0 0 24 24",
					width: "22",
					height: "22",
					"aria-hidden": "true",
					children: /* @__PURE__ */ a("path", {
						class: "fill-icon",
						d: playing ? "M7 5h4v14H7zM13 5h4v14h-4z" : "M8 5l11 7-11 7z"
					})
				})
			}),
			/* @__PURE__ */ a("div", {
				class: "rail",
				children: [/* @__PURE__ */ a("input", {
					type: "range",
					min: "0",
					max: "100",
					step: "1",
					value: Math.round(bench.share.value * 100),
					"aria-label": words.machine.scrub,
					"aria-valuetext": here.join(", "),
					onInput: (e) => {
						player.pause();
						bench.share.value = Number(e.currentTarget.value) / 100;
					}
				}), /* @__PURE__ */ a("span", {
					class: "rail-thirds",
					"aria-hidden": "true",
					children: words.thirds.map((name) => /* @__PURE__ */ a("span", { children: name }, name))
				})]
			}),
			/* @__PURE__ */ a("output", {
				class: "here-text",
				children: [/* @__PURE__ */ a("strong", { children: here[0] }), /* @__PURE__ */ a("span", { children: here[1] })]
			})
		]
	});
}
/** hereText says the force where the machine stands, and what mass would weigh as much. */
function hereText(bench) {
	const f = bench.shown.value?.curve?.lift[bench.position.value];
	const share = percent(bench.share.value);
	if (f === null || f === void 0) return [words.machine.gapHere, bench.frame.value?.gap || share];
	return [force(units.value, f), words.machine.heldMass(mass(units.value, held$1(f)))];
}
// src/screens/machine/why.tsx
/** Why the curve is as it is, and what is read from it. */
function WhyPane({ bench }) {
	const shown = bench.shown.value;
	const frame = bench.frame.value;
	const structure = bench.settled.value?.structure;
	if (!shown) return null;
	const lifting = shown.readings.find((r) => r.phase === "lifting") ?? shown.readings[0];
	return /* @__PURE__ */ a("div", {
		class: "pane-body prose",
		children: [
			shown.words.slice(1).map((w) => /* @__PURE__ */ a("p", { children: w }, w)),
			frame && (frame.because || frame.gap) && /* @__PURE__ */ a($, { children: [/* @__PURE__ */ a("h2", { children: words.why.here }), /* @__PURE__ */ a("p", { children: frame.because || frame.gap })] }),
			frame && frame.shares.length > 1 && /* @__PURE__ */ a(Shares, { bench }),
			lifting && /* @__PURE__ */ a(ReadingList, { readings: lifting }),
			/* @__PURE__ */ a(Thorough, { bench }),
			/* @__PURE__ */ a(CurveTable, { bench }),
			structure && /* @__PURE__ */ a($, { children: [
				/* @__PURE__ */ a(Lines, {
					title: words.why.understood,
					lines: structure.understood
				}),
				/* @__PURE__ */ a(Lines, {
					title: words.why.assumed,
					lines: structure.assumed
				}),
				/* @__PURE__ */ a(Lines, {
					title: words.why.missing,
					lines: structure.missing
				})
			] }),
			/* @__PURE__ */ a("section", {
				class: "care",
				children: [/* @__PURE__ */ a("h2", { children: words.why.care }), /* @__PURE__ */ a("ul", { children: shown.cautions.map((c) => /* @__PURE__ */ a("li", { children: c }, c)) })]
			})
		]
	});
}
function Lines({ title, lines }) {
	if (!lines.length) return null;
	return /* @__PURE__ */ a("details", { children: [/* @__PURE__ */ a("summary", { children: title }), /* @__PURE__ */ a("ul", { children: lines.map((l) => /* @__PURE__ */ a("li", { children: l }, l)) })] });
}
/** Shares sets beside each other what each source asks of the contact here. */
function Shares({ bench }) {
	const shares = bench.frame.value.shares;
	const most = Math.max(...shares.map((s) => Math.abs(s.force)), 1e-9);
	return /* @__PURE__ */ a($, { children: [/* @__PURE__ */ a("h2", { children: words.why.shares }), /* @__PURE__ */ a("ul", {
		class: "shares",
		children: shares.map((s) => /* @__PURE__ */ a("li", { children: [
			/* @__PURE__ */ a("span", { children: s.name }),
			/* @__PURE__ */ a("meter", {
				min: 0,
				max: 1,
				value: Math.abs(s.force) / most,
				"aria-label": s.name
			}),
			/* @__PURE__ */ a("span", {
				class: "number",
				children: force(units.value, s.force)
			})
		] }, s.name))
	})] });
}
function ReadingList({ readings: r }) {
	const u = units.value;
	const n = words.why.names;
	const rows = [
		[n.peak, `${force(u, r.peak.force)} ${words.why.at(percent(r.peak.share))}`],
		[n.least, `${force(u, r.least.force)} ${words.why.at(percent(r.least.share))}`],
		[n.start, force(u, r.start.force)],
		[n.end, force(u, r.end.force)],
		[n.mean, force(u, r.mean)],
		...r.thirds.map((t, i) => [words.thirds[i], `${force(u, t.mean)}, ${percent(t.share)}`]),
		[n.peakToStart, ratio(r.peakToStart)],
		[n.flatness, ratio(r.flatness)],
		[n.travel, travel(u, r.length)],
		[n.work, work(r.workUp)]
	];
	if (r.liftRatio) rows.push([n.ratio, ratio(r.liftRatio)]);
	if (r.lost > .05) rows.push([n.lost, work(r.lost)]);
	return /* @__PURE__ */ a($, { children: [/* @__PURE__ */ a("h2", { children: words.why.readings }), /* @__PURE__ */ a("dl", {
		class: "readings",
		children: rows.map(([name, text]) => /* @__PURE__ */ a("div", { children: [/* @__PURE__ */ a("dt", { children: name }), /* @__PURE__ */ a("dd", { children: text })] }, name))
	})] });
}
/** Thorough asks for the sampled band, tells how far it is, and can be stopped. */
function Thorough({ bench }) {
	const progress = useSignal(null);
	const result = useSignal(null);
	const trouble = useSignal(null);
	const stop = T(null);
	const settled = bench.settled.value;
	A$1(() => {
		result.value = null;
		return () => stop.current?.abort();
	}, [settled?.text, bench.choices.value]);
	if (!settled?.band && !result.value) return null;
	const begin = async () => {
		stop.current = new AbortController();
		progress.value = {
			done: 0,
			total: 1
		};
		trouble.value = null;
		try {
			const question = {
				sheet: bench.id,
				look: bench.look(false)
			};
			result.value = await watch("POST /api/evaluate", {
				in: question,
				signal: stop.current.signal
			}, (p) => progress.value = p);
		} catch (err) {
			if (!stop.current.signal.aborted) trouble.value = troubleOf(err);
		} finally {
			progress.value = null;
		}
	};
	const p = progress.value;
	return /* @__PURE__ */ a("div", {
		class: "thorough",
		children: [
			p ? /* @__PURE__ */ a("div", {
				class: "row",
				children: [
					/* @__PURE__ */ a("progress", {
						max: p.total,
						value: p.done,
						"aria-label": words.why.thorough
					}),
					/* @__PURE__ */ a("span", { children: words.why.progress(p.done, p.total) }),
					/* @__PURE__ */ a("button", {
						type: "button",
						onClick: () => stop.current?.abort(),
						children: words.cancel
					})
				]
			}) : !result.value && /* @__PURE__ */ a($, { children: [/* @__PURE__ */ a("button", {
				type: "button",
				onClick: () => void begin(),
				children: words.why.thorough
			}), /* @__PURE__ */ a("p", {
				class: "faint small",
				children: words.why.thoroughHint
			})] }),
			trouble.value && /* @__PURE__ */ a(TroubleNote, { problem: trouble.value }),
			result.value?.band && /* @__PURE__ */ a(Sampled, { preview: result.value })
		]
	});
}
function Sampled({ preview }) {
	const u = units.value;
	const { band, words: said } = preview;
	const peak = band.ranges.peak;
	return /* @__PURE__ */ a("div", {
		class: "note",
		role: "status",
		children: [
			/* @__PURE__ */ a("p", { children: said[0] }),
			peak && /* @__PURE__ */ a("p", { children: words.why.sampled(force(u, peak.low), force(u, peak.high)) }),
			band.failed > 0 && /* @__PURE__ */ a("p", { children: words.why.failed(band.failed, band.draws) })
		]
	});
}
// src/screens/machine/machine.tsx
/** A machine: its drawing with the load ribbon, its curve, and what decides. */
var tab = y$1("curve");
function MachineScreen({ id }) {
	const bench = w$2(() => new Bench(id), [id]);
	const player = w$2(() => new Player(bench), [bench]);
	A$1(() => () => {
		player.close();
		bench.close();
	}, [bench, player]);
	A$1(() => {
		const again = () => {
			if (bench.sheet.value) bench.again();
		};
		const stops = [pounds.subscribe(again), trainee.subscribe(again)];
		return () => {
			for (const stop of stops) stop();
		};
	}, [bench]);
	const trouble = bench.trouble.value;
	return /* @__PURE__ */ a("div", {
		class: "machine-screen",
		onKeyDown: (e) => shortcut(e, bench),
		children: [
			/* @__PURE__ */ a(Head, { bench }),
			trouble && /* @__PURE__ */ a(TroubleNote, {
				problem: trouble.code === "not found" ? {
					...trouble,
					message: words.trouble.gone
				} : trouble,
				retry: () => {
					bench.trouble.value = null;
					bench.open();
				}
			}),
			/* @__PURE__ */ a("div", {
				class: "machine-left",
				children: [
					/* @__PURE__ */ a(Mends, { bench }),
					/* @__PURE__ */ a(Board$1, { bench }),
					/* @__PURE__ */ a(StrokeBar, {
						bench,
						player
					})
				]
			}),
			/* @__PURE__ */ a(Right, { bench }),
			bench.conflict.value && /* @__PURE__ */ a(ConflictDialog, {
				bench,
				conflict: bench.conflict.value
			})
		]
	});
}
/** shortcut undoes and redoes by the usual keys, but not while text is typed. */
function shortcut(e, bench) {
	if (!(e.ctrlKey || e.metaKey) || e.key.toLowerCase() !== "z") return;
	if (e.target instanceof HTMLTextAreaElement || e.target instanceof HTMLInputElement && e.target.type === "text") return;
	e.preventDefault();
	if (e.shiftKey) bench.redo();
	else bench.undo();
}
var dots = /* @__PURE__ */ a("svg", {
	viewBox: "0 0 24 24",
	width: "20",
	height: "20",
	"aria-hidden": "true",
	children: /* @__PURE__ */ a("path", {
		class: "fill-icon",
		d: "M12 4a2 2 0 1 1 0 4 2 2 0 0 1 0-4zm0 6a2 2 0 1 1 0 4 2 2 0 0 1 0-4zm0 6a2 2 0 1 1 0 4 2 2 0 0 1 0-4z"
	})
});
function Head({ bench }) {
	const sheet = bench.sheet.value;
	const name = bench.shown.value?.name || sheet?.name || "";
	const leave = async () => {
		if (!sheet || !confirm(words.machine.removeSure(name))) return;
		if (await remove(sheet.id, sheet.revision)) go({ screen: "room" });
	};
	return /* @__PURE__ */ a("div", {
		class: "machine-head",
		"data-saving": bench.saving.value ? "yes" : "no",
		children: [
			/* @__PURE__ */ a(BackLink, {
				to: { screen: "room" },
				label: words.machine.back
			}),
			/* @__PURE__ */ a("h1", { children: name }),
			/* @__PURE__ */ a("div", {
				class: "machine-actions",
				children: [
					/* @__PURE__ */ a(IconButton, {
						label: words.machine.undo,
						d: "M8 5L4 9l4 4M4 9h9a6 6 0 0 1 0 12h-3",
						off: !sheet?.undo,
						act: () => bench.undo()
					}),
					/* @__PURE__ */ a(IconButton, {
						label: words.machine.redo,
						d: "M16 5l4 4-4 4M20 9h-9a6 6 0 0 0 0 12h3",
						off: !sheet?.redo,
						act: () => bench.redo()
					}),
					/* @__PURE__ */ a("a", {
						class: "button strong wide-only",
						href: write({
							screen: "explain",
							id: bench.id
						}),
						children: words.machine.explain
					}),
					/* @__PURE__ */ a(Menu, {
						label: words.machine.more,
						icon: dots,
						children: [
							/* @__PURE__ */ a("a", {
								class: "button narrow-only",
								href: write({
									screen: "explain",
									id: bench.id
								}),
								children: words.machine.explain
							}),
							/* @__PURE__ */ a("a", {
								class: "button",
								href: write({
									screen: "compare",
									ids: [bench.id]
								}),
								children: words.machine.compare
							}),
							/* @__PURE__ */ a("button", {
								type: "button",
								onClick: () => void leave(),
								children: words.machine.remove
							})
						]
					})
				]
			})
		]
	});
}
function IconButton({ label, d, off, act }) {
	return /* @__PURE__ */ a("button", {
		type: "button",
		class: "icon",
		"aria-label": label,
		title: label,
		disabled: off,
		onClick: act,
		children: /* @__PURE__ */ a("svg", {
			viewBox: "0 0 24 24",
			width: "20",
			height: "20",
			"aria-hidden": "true",
			children: /* @__PURE__ */ a("path", {
				class: "line-icon",
				d
			})
		})
	});
}
/** Mends tells how the board is used, or what stands in the way. */
function Mends({ bench }) {
	const problems = bench.problems.value;
	const trying = bench.edits.value.length > 0;
	return /* @__PURE__ */ a("div", {
		class: "board-head",
		children: [
			/* @__PURE__ */ a(Choice, {
				label: words.machine.modes.label,
				hideLabel: true,
				options: [{
					value: "work",
					name: words.machine.modes.work
				}, {
					value: "alter",
					name: words.machine.modes.alter
				}],
				value: mode.value,
				choose: (v) => mode.value = v
			}),
			problems.length > 0 ? /* @__PURE__ */ a("div", {
				class: "board-says warn-text",
				role: "alert",
				children: [trying && /* @__PURE__ */ a("strong", { children: words.machine.cannot }), /* @__PURE__ */ a(ProblemList, { problems: problems.slice(0, 1) })]
			}) : bench.notice.value ? /* @__PURE__ */ a(Notice, { text: bench.notice.value }) : /* @__PURE__ */ a("p", {
				class: "board-says faint wide-only",
				children: words.machine.modeHints[mode.value]
			}),
			/* @__PURE__ */ a(PersonPicker, {})
		]
	});
}
function Right({ bench }) {
	const wide = useWide();
	const all = words.machine.tabs;
	const tabs = [
		...wide ? [] : [{
			value: "curve",
			name: all.curve
		}],
		...trainee.value ? [{
			value: "person",
			name: words.person.tab
		}] : [],
		{
			value: "set",
			name: all.set
		},
		{
			value: "measure",
			name: all.measure
		},
		{
			value: "why",
			name: all.why
		},
		{
			value: "sheet",
			name: all.sheet
		}
	];
	const open = tabs.some((t) => t.value === tab.value) ? tab.value : tabs[0].value;
	return /* @__PURE__ */ a("div", {
		class: "machine-right",
		children: [
			wide && /* @__PURE__ */ a(Lead, { bench }),
			wide && /* @__PURE__ */ a(CurveView, { bench }),
			/* @__PURE__ */ a(Tabs, {
				label: all.label,
				tabs,
				open,
				choose: (t) => tab.value = t,
				children: [
					open === "curve" && /* @__PURE__ */ a("div", {
						class: "pane-body",
						children: [
							/* @__PURE__ */ a(CurveView, { bench }),
							/* @__PURE__ */ a(Lead, { bench }),
							/* @__PURE__ */ a("a", {
								class: "button strong narrow-only",
								href: write({
									screen: "explain",
									id: bench.id
								}),
								children: words.machine.explainStroke
							})
						]
					}),
					open === "person" && /* @__PURE__ */ a(PersonPane, { bench }),
					open === "set" && /* @__PURE__ */ a(SetPane, { bench }),
					open === "measure" && /* @__PURE__ */ a(MeasurePane, { bench }),
					open === "why" && /* @__PURE__ */ a($, { children: [!wide && /* @__PURE__ */ a(Lead, { bench }), /* @__PURE__ */ a(WhyPane, { bench })] }),
					open === "sheet" && /* @__PURE__ */ a(SheetPane, { bench })
				]
			})
		]
	});
}
function Lead({ bench }) {
	return /* @__PURE__ */ a("p", {
		class: "verdict",
		children: bench.shown.value?.words[0]
	});
}
// src/screens/people.tsx
/** The people who train here: what is known of each, what is filled in, and what would make it closer. */
function PeopleScreen() {
	const trouble = useSignal(null);
	A$1(() => void refresh(trainee.value), []);
	const people = room.value?.people ?? [];
	const add = async () => {
		try {
			await ask("POST /api/sheets", { in: { text: await (await ask("GET /api/example/{kind}", { path: { kind: "person" } })).text() } });
			await refresh(trainee.value);
		} catch (err) {
			trouble.value = troubleOf(err);
		}
	};
	const shown = trouble.value ?? roomTrouble.value;
	return /* @__PURE__ */ a("div", {
		class: "people-screen",
		children: [
			/* @__PURE__ */ a("div", {
				class: "screen-head",
				children: [/* @__PURE__ */ a("h1", { children: words.people.title }), /* @__PURE__ */ a("button", {
					type: "button",
					class: "strong",
					onClick: () => void add(),
					children: words.people.add
				})]
			}),
			/* @__PURE__ */ a("p", {
				class: "lead",
				children: words.people.lead
			}),
			shown && /* @__PURE__ */ a(TroubleNote, { problem: shown }),
			room.value && !people.length && /* @__PURE__ */ a("p", {
				class: "empty",
				children: words.people.empty
			}),
			/* @__PURE__ */ a("ul", {
				class: "people-list",
				children: people.map((p) => /* @__PURE__ */ a("li", { children: /* @__PURE__ */ a(Person, { card: p }) }, p.id))
			})
		]
	});
}
/** usePerson holds one person's sheet, as stored and as understood. */
function usePerson(card) {
	const sheet = useSignal(null);
	const person = useSignal(null);
	const trouble = useSignal(null);
	const guarded = async (work) => {
		try {
			await work();
			trouble.value = null;
			return true;
		} catch (err) {
			trouble.value = troubleOf(err);
			return false;
		}
	};
	const understand = async (text, edits = []) => {
		person.value = await ask("POST /api/person", { in: {
			text,
			edits,
			look: {}
		} });
	};
	const open = () => guarded(async () => {
		sheet.value = await ask("GET /api/sheets/{id}", { path: { id: card.id } });
		await understand(sheet.value.text);
	});
	const keep = (text) => guarded(async () => {
		const revision = sheet.value?.revision ?? card.revision;
		const saved = await ask("PUT /api/sheets/{id}", {
			path: { id: card.id },
			in: {
				revision,
				text
			}
		});
		sheet.value = saved.sheet;
		await understand(saved.sheet.text);
		await refresh(trainee.value);
	});
	/** change stores one number and reports whether it could; what cannot be understood is told, and not stored. */
	const change = (path, text) => guarded(async () => {
		if (person.value?.entries.some((e) => e.path === path && e.text === text)) return;
		const tried = await ask("POST /api/person", { in: {
			text: sheet.value?.text ?? "",
			edits: [{ value: {
				path,
				text
			} }],
			look: {}
		} });
		if (tried.problems.length) throw new Error(tried.problems.map((p) => p.message).join(" "));
		await keep(tried.text);
	});
	return {
		sheet,
		person,
		trouble,
		open,
		keep,
		change
	};
}
function Person({ card }) {
	const p = usePerson(card);
	const draft = useSignal(null);
	const known = p.person.value;
	const text = draft.value ?? p.sheet.value?.text ?? "";
	return /* @__PURE__ */ a("details", {
		onToggle: (e) => {
			if (e.currentTarget.open && !p.sheet.value) p.open();
		},
		children: [
			/* @__PURE__ */ a("summary", { children: card.name }),
			p.trouble.value && /* @__PURE__ */ a(TroubleNote, { problem: p.trouble.value }),
			known && /* @__PURE__ */ a(ProblemList, { problems: known.problems }),
			known && !known.problems.length && /* @__PURE__ */ a("div", {
				class: "person-grid",
				children: [/* @__PURE__ */ a("div", { children: known.entries.filter((e) => e.path !== "steelyard").map((e) => /* @__PURE__ */ a(Entry, {
					entry: e,
					change: (next) => p.change(e.path, next)
				}, e.path)) }), /* @__PURE__ */ a("div", { children: [
					/* @__PURE__ */ a(Told, {
						title: words.people.warnings,
						lines: known.warnings,
						open: true
					}),
					/* @__PURE__ */ a(Told, {
						title: words.people.missing,
						lines: known.missing,
						open: true
					}),
					/* @__PURE__ */ a(Told, {
						title: words.why.understood,
						lines: known.understood
					}),
					/* @__PURE__ */ a(Told, {
						title: words.why.assumed,
						lines: known.assumed
					})
				] })]
			}),
			p.sheet.value && /* @__PURE__ */ a("details", { children: [
				/* @__PURE__ */ a("summary", { children: words.people.edit }),
				/* @__PURE__ */ a("textarea", {
					rows: 16,
					spellcheck: false,
					"aria-label": `${words.people.edit}: ${card.name}`,
					value: text,
					onInput: (e) => {
						draft.value = e.currentTarget.value;
					}
				}),
				/* @__PURE__ */ a("button", {
					type: "button",
					class: "strong",
					disabled: text === p.sheet.value.text,
					onClick: () => {
						draft.value = null;
						p.keep(text);
					},
					children: words.people.keep
				})
			] }),
			/* @__PURE__ */ a("div", {
				class: "row person-actions",
				children: /* @__PURE__ */ a("button", {
					type: "button",
					onClick: () => void remove(card.id, p.sheet.value?.revision ?? card.revision),
					children: words.people.removed
				})
			})
		]
	});
}
/** Entry is one number of the sheet. What is refused stays in the field, to be mended. */
function Entry({ entry, change }) {
	const refused = useSignal(null);
	return /* @__PURE__ */ a("label", {
		class: "entry",
		children: [/* @__PURE__ */ a("span", { children: entry.path.replaceAll("_", " ").replaceAll(".", ", ") }), /* @__PURE__ */ a("input", {
			type: "text",
			value: refused.value ?? entry.text,
			"aria-invalid": refused.value !== null,
			onChange: async (e) => {
				const text = e.currentTarget.value;
				refused.value = await change(text) ? null : text;
			}
		})]
	});
}
function Told({ title, lines, open = false }) {
	if (!lines.length) return null;
	return /* @__PURE__ */ a("details", {
		open,
		children: [/* @__PURE__ */ a("summary", { children: title }), /* @__PURE__ */ a("ul", { children: lines.map((l) => /* @__PURE__ */ a("li", { children: l }, l)) })]
	});
}
// src/parts/sign.tsx
var side = 96;
function SignPicture({ sign }) {
	const force = sign.force.map((f) => f ?? NaN);
	const third = Math.round((sign.path.length - 1) / 3);
	const ribbon = {
		base: sign.path,
		side: sign.normal,
		force,
		low: force,
		high: force,
		thirds: [third, 2 * third]
	};
	const box = around(sign.path);
	if (!box) return null;
	const full = ceiling(ribbon);
	const wide = .34 * side;
	const view = fitWith(box, ribbon, wide, full, {
		width: side,
		height: side
	}, 10);
	return /* @__PURE__ */ a("svg", {
		class: "sign",
		viewBox: `0 0 ${side} ${side}`,
		"aria-hidden": "true",
		children: /* @__PURE__ */ a(RibbonShape, {
			laid: {
				ribbon,
				view,
				perNewton: wide / full,
				full
			},
			hatch: "",
			band: false
		})
	});
}
// src/state/order.ts
var third = {
	start: 0,
	middle: 1,
	end: 2
};
/** sorted returns the machines in the order; those that cannot be computed come last. */
function sorted(machines, order) {
	const byName = [...machines].sort((a, b) => a.name.localeCompare(b.name));
	if (order === "name") return byName;
	const weight = (m) => {
		if (!m.sign) return Number.NEGATIVE_INFINITY;
		if (order === "fit") return m.fit && !m.fit.trouble ? m.fit.reached * m.fit.inRange : -1;
		return order === "force" ? m.sign.peak : shareOf(m.sign.thirds, third[order]);
	};
	return byName.sort((a, b) => {
		const [x, y] = [weight(a), weight(b)];
		return x === y ? 0 : y > x ? 1 : -1;
	});
}
/** shareOf returns which part of the three mean forces the given third has. */
function shareOf(thirds, i) {
	const all = thirds.reduce((sum, f) => sum + Math.abs(f), 0);
	return all > 0 ? Math.abs(thirds[i] ?? 0) / all : 0;
}
/** musclesOf lists the muscles that any of the machines trains. */
var musclesOf = (machines) => [...new Set(machines.flatMap((m) => m.muscles))].sort((a, b) => a.localeCompare(b));
/** matches reports whether each word is found in the machine's name, notes, loading or contact. */
function matches(m, text) {
	const all = [
		m.name,
		m.notes,
		m.loads,
		m.contact,
		...m.exercises,
		...m.muscles
	].join(" ").toLowerCase();
	return text.toLowerCase().split(/\s+/).every((word) => all.includes(word));
}
// src/screens/room.tsx
/** The room: a board of machines, each by its sign. */
var order = kept("order", "name");
var wanted = y$1("");
var muscle = y$1("");
var picked = y$1([]);
var most = 6;
var orders = Object.entries(words.room.sorts).map(([value, name]) => ({
	value,
	name
}));
function RoomScreen() {
	A$1(() => void refresh(trainee.value), [trainee.value]);
	const now = room.value;
	return /* @__PURE__ */ a("div", {
		class: "room-screen",
		children: [
			/* @__PURE__ */ a("div", {
				class: "screen-head",
				children: [/* @__PURE__ */ a("h1", { children: words.room.title }), now && now.machines.length > 0 && /* @__PURE__ */ a("a", {
					class: "button strong",
					href: write({
						screen: "build",
						family: ""
					}),
					children: words.room.add
				})]
			}),
			roomTrouble.value && /* @__PURE__ */ a(TroubleNote, {
				problem: roomTrouble.value,
				retry: () => void refresh(trainee.value)
			}),
			!now && !roomTrouble.value && /* @__PURE__ */ a("p", {
				class: "faint",
				children: words.loading
			}),
			now && (now.machines.length ? /* @__PURE__ */ a(Board, { room: now }) : /* @__PURE__ */ a(Empty, {})),
			now && /* @__PURE__ */ a(More, { room: now })
		]
	});
}
function Empty() {
	return /* @__PURE__ */ a("div", {
		class: "empty",
		children: [
			/* @__PURE__ */ a("h2", { children: words.room.emptyTitle }),
			/* @__PURE__ */ a("p", { children: words.room.empty }),
			/* @__PURE__ */ a("div", {
				class: "row",
				children: [/* @__PURE__ */ a("a", {
					class: "button strong",
					href: write({
						screen: "build",
						family: ""
					}),
					children: words.room.add
				}), /* @__PURE__ */ a("button", {
					type: "button",
					onClick: () => void furnish(true),
					children: words.room.demoIn
				})]
			})
		]
	});
}
function Board({ room: r }) {
	const shown = sorted(r.machines.filter((m) => matches(m, wanted.value) && (!muscle.value || m.muscles.includes(muscle.value))), trainee.value || order.value !== "fit" ? order.value : "name");
	const chosen = picked.value.filter((id) => r.machines.some((m) => m.id === id));
	return /* @__PURE__ */ a($, { children: [
		/* @__PURE__ */ a("p", {
			class: "lead",
			children: words.room.lead
		}),
		/* @__PURE__ */ a("div", {
			class: "board-tools",
			children: [
				/* @__PURE__ */ a("label", {
					class: "find",
					children: [/* @__PURE__ */ a("span", { children: words.room.find }), /* @__PURE__ */ a("input", {
						type: "search",
						placeholder: words.room.findHint,
						value: wanted.value,
						onInput: (e) => wanted.value = e.currentTarget.value
					})]
				}),
				/* @__PURE__ */ a(Choice, {
					label: words.room.sort,
					options: trainee.value ? [...orders, {
						value: "fit",
						name: words.room.sortFit
					}] : orders,
					value: order.value,
					choose: (v) => order.value = v
				}),
				/* @__PURE__ */ a("div", {
					class: "row",
					children: [/* @__PURE__ */ a("label", {
						class: "muscle-picker",
						children: [/* @__PURE__ */ a("span", { children: words.room.muscle }), /* @__PURE__ */ a("select", {
							value: muscle.value,
							onChange: (e) => muscle.value = e.currentTarget.value,
							children: [/* @__PURE__ */ a("option", {
								value: "",
								children: words.room.anyMuscle
							}), musclesOf(r.machines).map((m) => /* @__PURE__ */ a("option", {
								value: m,
								children: m
							}, m))]
						})]
					}), /* @__PURE__ */ a(PersonPicker, {})]
				})
			]
		}),
		/* @__PURE__ */ a("p", {
			class: "faint",
			role: "status",
			children: shown.length ? words.room.count(shown.length) : words.room.none
		}),
		/* @__PURE__ */ a("ul", {
			class: "board",
			children: shown.map((m) => /* @__PURE__ */ a(Card, {
				machine: m,
				chosen
			}, m.id))
		}),
		chosen.length > 0 && /* @__PURE__ */ a("div", {
			class: "picked",
			children: /* @__PURE__ */ a("a", {
				class: "button strong",
				href: write({
					screen: "compare",
					ids: chosen
				}),
				children: words.room.compare(chosen.length)
			})
		})
	] });
}
function Card({ machine: m, chosen }) {
	const on = chosen.includes(m.id);
	const toggle = () => {
		picked.value = on ? chosen.filter((id) => id !== m.id) : [...chosen, m.id];
	};
	return /* @__PURE__ */ a("li", {
		class: "card",
		children: [/* @__PURE__ */ a("a", {
			href: write({
				screen: "machine",
				id: m.id
			}),
			children: [/* @__PURE__ */ a("div", {
				class: "card-sign",
				children: m.sign ? /* @__PURE__ */ a(SignPicture, { sign: m.sign }) : /* @__PURE__ */ a("span", {
					class: "no-sign",
					children: "?"
				})
			}), /* @__PURE__ */ a("div", {
				class: "card-words",
				children: [
					/* @__PURE__ */ a("strong", { children: m.name }),
					/* @__PURE__ */ a("span", {
						class: "loads",
						children: m.sign ? words.room.loads(m.loads) : words.room.untested
					}),
					/* @__PURE__ */ a("span", {
						class: "faint",
						children: m.sign ? words.room.upTo(force(units.value, m.sign.peak)) : m.trouble
					}),
					m.fit && /* @__PURE__ */ a(FitLines, { fit: m.fit })
				]
			})]
		}), /* @__PURE__ */ a("label", {
			class: "pick",
			title: words.room.pick(m.name),
			children: /* @__PURE__ */ a("input", {
				type: "checkbox",
				checked: on,
				disabled: !on && (chosen.length >= most || !m.sign),
				onChange: toggle,
				"aria-label": words.room.pick(m.name)
			})
		})]
	});
}
/** FitLines says how the machine suits the person. */
function FitLines({ fit }) {
	if (fit.trouble) return /* @__PURE__ */ a("span", {
		class: "faint small",
		children: fit.trouble
	});
	const share = fit.reached * fit.inRange;
	return /* @__PURE__ */ a("span", {
		class: "fit-lines small",
		children: [fit.effort !== null && /* @__PURE__ */ a("span", { children: words.person.fit(percent(fit.effort), fit.limiting) }), share < .995 && /* @__PURE__ */ a("span", {
			class: "warn-text",
			children: words.person.reach(percent(share))
		})]
	});
}
function More({ room: r }) {
	const file = T(null);
	return /* @__PURE__ */ a("details", {
		class: "more",
		children: [
			/* @__PURE__ */ a("summary", { children: words.room.more }),
			/* @__PURE__ */ a("div", {
				class: "row",
				children: [
					/* @__PURE__ */ a("a", {
						class: "button",
						href: addressOf("GET /api/export.zip"),
						download: "steelyard.zip",
						children: words.room.export
					}),
					/* @__PURE__ */ a("button", {
						type: "button",
						onClick: () => file.current?.click(),
						children: words.room.import
					}),
					/* @__PURE__ */ a("input", {
						ref: file,
						class: "unseen",
						type: "file",
						accept: ".zip,application/zip",
						tabIndex: -1,
						"aria-label": words.room.import,
						onChange: (e) => {
							const chosen = e.currentTarget.files?.[0];
							e.currentTarget.value = "";
							if (chosen) take(chosen);
						}
					}),
					/* @__PURE__ */ a("button", {
						type: "button",
						onClick: () => void furnish(!r.demo),
						children: r.demo ? words.room.demoOut : words.room.demoIn
					})
				]
			}),
			r.removed.length > 0 && /* @__PURE__ */ a($, { children: [/* @__PURE__ */ a("h2", { children: words.room.removed }), /* @__PURE__ */ a("ul", {
				class: "plain-list",
				children: r.removed.map((s) => /* @__PURE__ */ a("li", { children: [/* @__PURE__ */ a("span", { children: s.name }), /* @__PURE__ */ a("button", {
					type: "button",
					onClick: () => void recover(s.id),
					"aria-label": `${words.room.recover}: ${s.name}`,
					children: words.room.recover
				})] }, s.id))
			})] }),
			/* @__PURE__ */ a("p", {
				class: "faint",
				children: [
					words.room.folder,
					" ",
					/* @__PURE__ */ a("code", { children: r.folder })
				]
			})
		]
	});
}
// src/state/session.ts
/** Trades the token in the address for a cookie, once, and takes it out of the address. */
/** begin signs this browser in if it came with a token. It throws a Trouble. */
async function begin() {
	const token = /^#(?:token=)?([0-9a-f]{32})$/.exec(location.hash)?.[1];
	if (!token) return;
	correct({ screen: "room" });
	await ask("POST /api/session", { in: { token } });
}
// src/app.tsx
/** The shell: which screen is shown, the way between them, and how the page looks. */
function App() {
	const [ready, setReady] = d$2(false);
	const [trouble, setTrouble] = d$2(null);
	A$1(() => {
		begin().then(() => setReady(true)).catch((err) => setTrouble(troubleOf(err)));
	}, []);
	const now = route.value;
	return /* @__PURE__ */ a("div", {
		class: `shell on-${now.screen}`,
		children: [
			/* @__PURE__ */ a("a", {
				class: "skip",
				href: "#content",
				onClick: toContent,
				children: words.skip
			}),
			/* @__PURE__ */ a(Beam, { route: now }),
			/* @__PURE__ */ a("main", {
				id: "content",
				tabIndex: -1,
				children: [trouble && /* @__PURE__ */ a(TroubleNote, { problem: trouble }), ready && /* @__PURE__ */ a(Screen, { route: now })]
			})
		]
	});
}
/** toContent moves the focus without leaving the screen, whose address stands after the #. */
function toContent(e) {
	e.preventDefault();
	document.getElementById("content")?.focus();
}
function Screen({ route: r }) {
	switch (r.screen) {
		case "room": return /* @__PURE__ */ a(RoomScreen, {});
		case "machine": return /* @__PURE__ */ a(MachineScreen, { id: r.id }, r.id);
		case "explain": return /* @__PURE__ */ a(ExplainScreen, { id: r.id }, r.id);
		case "build": return /* @__PURE__ */ a(BuildScreen, { family: r.family });
		case "compare": return /* @__PURE__ */ a(CompareScreen, { ids: r.ids });
		case "people": return /* @__PURE__ */ a(PeopleScreen, {});
	}
}
// src/main.tsx
Q(/* @__PURE__ */ a(App, {}), document.getElementById("page"));
