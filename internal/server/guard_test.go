package server

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"steelyard/internal/server/api"
)

func TestWhoIsLetIn(t *testing.T) {
	d := open(t, t.TempDir())
	host := strings.TrimPrefix(d.url, "http://")
	stranger := &http.Client{}
	for _, c := range []struct {
		name         string
		method, path string
		client       *http.Client
		host         string
		header       map[string]string
		want         int
	}{
		{"the page's own browser", "GET", "/api/room", d.client, host, nil, 200},
		{"the page itself, to anybody", "GET", "/", stranger, host, nil, 200},
		{"no cookie", "GET", "/api/room", stranger, host, nil, 403},
		{"no cookie, nothing there", "GET", "/api/nothing", stranger, host, nil, 403},
		{"another name for this machine", "GET", "/api/room", d.client, "evil.example:80", nil, 403},
		{"another name, the page", "GET", "/", d.client, "evil.example", nil, 403},
		{"another name with a matching origin", "POST", "/api/demo", d.client, "evil.example", map[string]string{"Origin": "http://evil.example"}, 403},
		{"another site's form", "POST", "/api/demo", d.client, host, map[string]string{"Sec-Fetch-Site": "cross-site"}, 403},
		{"another site's script", "POST", "/api/demo", d.client, host, map[string]string{"Origin": "http://evil.example"}, 403},
		{"the same host's other port", "POST", "/api/demo", d.client, host, map[string]string{"Sec-Fetch-Site": "same-site"}, 403},
	} {
		req, err := http.NewRequest(c.method, d.url+c.path, strings.NewReader(`{"present":true}`))
		if err != nil {
			t.Fatal(err)
		}
		req.Host = c.host
		req.Header.Set("Content-Type", api.JSON)
		for k, v := range c.header {
			req.Header.Set(k, v)
		}
		res, err := c.client.Do(req)
		if err != nil {
			t.Fatal(err)
		}
		res.Body.Close()
		if res.StatusCode != c.want {
			t.Errorf("%s: %d, want %d", c.name, res.StatusCode, c.want)
		}
		for _, h := range []string{"Content-Security-Policy", "X-Content-Type-Options", "Referrer-Policy", "Cross-Origin-Opener-Policy", "Cross-Origin-Resource-Policy"} {
			if res.Header.Get(h) == "" {
				t.Errorf("%s: no %s", c.name, h)
			}
		}
	}
}

func TestTokenBuysACookieThatScriptsCannotSee(t *testing.T) {
	d := open(t, t.TempDir())
	for _, wrong := range []string{"", "x", token[:31], token + "0", strings.ToUpper(token)} {
		if status, p := d.ask("POST", "/api/session", api.Session{Token: wrong}, nil); status != 403 || p.Code != api.Refused {
			t.Errorf("token %q: %d", wrong, status)
		}
	}
	res, err := http.Post(d.url+"/api/session", api.JSON, strings.NewReader(`{"token":"`+token+`"}`))
	if err != nil {
		t.Fatal(err)
	}
	defer res.Body.Close()
	cookies := res.Cookies()
	if len(cookies) != 1 || !cookies[0].HttpOnly || cookies[0].SameSite != http.SameSiteStrictMode || cookies[0].Path != "/" || len(cookies[0].Value) != 32 {
		t.Fatalf("%+v", cookies)
	}
	if has, _ := d.store.HasSession(t.Context(), cookies[0].Value); has {
		t.Error("the cookie itself is stored")
	}
}

// No inline script and nothing from elsewhere.
func TestPolicyIsStrict(t *testing.T) {
	d := open(t, t.TempDir())
	res, _ := d.raw("/", nil)
	csp := res.Header.Get("Content-Security-Policy")
	for _, want := range []string{"default-src 'none'", "script-src 'self'", "style-src 'self'", "frame-ancestors 'none'", "base-uri 'none'"} {
		if !strings.Contains(csp, want) {
			t.Errorf("the policy lacks %s: %s", want, csp)
		}
	}
	for _, never := range []string{"unsafe", "http:", "https:", "*"} {
		if strings.Contains(csp, never) {
			t.Errorf("the policy has %s: %s", never, csp)
		}
	}
}

func TestRequestsThatCannotBeRead(t *testing.T) {
	d := open(t, t.TempDir())
	for _, c := range []struct {
		name, path, kind, body string
		want                   int
		code                   api.Code
	}{
		{"no JSON", "/api/preview", api.JSON, "hello", 400, api.BadRequest},
		{"nothing", "/api/preview", api.JSON, "", 400, api.BadRequest},
		{"a form", "/api/preview", "application/x-www-form-urlencoded", "text=1", 400, api.BadRequest},
		{"no type", "/api/preview", "", "{}", 400, api.BadRequest},
		{"unknown field", "/api/preview", api.JSON, `{"boat":1}`, 400, api.BadRequest},
		{"two bodies", "/api/demo", api.JSON, `{"present":true}{}`, 400, api.BadRequest},
		{"a number where a text is", "/api/preview", api.JSON, `{"text":1,"look":{}}`, 400, api.BadRequest},
		{"neither text nor sheet", "/api/preview", api.JSON, `{"look":{}}`, 400, api.BadRequest},
		{"too large", "/api/preview", api.JSON, `{"text":"` + strings.Repeat("a", mostJSON) + `"}`, 413, api.TooLarge},
		{"a long sheet", "/api/preview", api.JSON, `{"text":"` + strings.Repeat("a", 300<<10) + `","look":{}}`, 413, api.TooLarge},
		{"unknown sheet", "/api/preview", api.JSON, `{"sheet":"../../etc","look":{}}`, 404, api.NotFound},
		{"seven compared", "/api/compare", api.JSON, `{"items":[{},{},{},{},{},{},{}]}`, 400, api.BadRequest},
		{"none compared", "/api/compare", api.JSON, `{"items":[]}`, 400, api.BadRequest},
		{"no such address", "/api/boats", api.JSON, `{}`, 404, api.NotFound},
		{"a sheet of no kind", "/api/sheets", api.JSON, `{"text":"name: x"}`, 422, api.Unusable},
		{"deep brackets", "/api/preview", api.JSON, `{"text":"steelyard: machine 1\npoints: ` + strings.Repeat("[", 100_000) + `","look":{}}`, 200, ""},
	} {
		status, p := d.send("POST", c.path, c.kind, strings.NewReader(c.body), nil)
		if status != c.want || p.Code != c.code {
			t.Errorf("%s: %d %+v, want %d %s", c.name, status, p, c.want, c.code)
		}
	}
}

func TestPanicsAreAnswered(t *testing.T) {
	d := open(t, t.TempDir())
	s := &Server{Config: Config{Store: d.store, Log: quiet()}}
	w := httptest.NewRecorder()
	s.route(api.Route{Path: "/api/session"}, func(http.ResponseWriter, *http.Request) error { panic("secret detail") }).
		ServeHTTP(w, httptest.NewRequest("POST", "/api/session", nil))
	if w.Code != 500 || strings.Contains(w.Body.String(), "secret") || !strings.Contains(w.Body.String(), "reload the page") {
		t.Errorf("%d %s", w.Code, w.Body)
	}
}

func TestPageIsSentOnce(t *testing.T) {
	d := open(t, t.TempDir())
	res, body := d.raw("/", http.Header{"Accept-Encoding": {"gzip"}})
	if res.Header.Get("Content-Encoding") != "gzip" || len(body) >= len(pageFiles["index.html"].Data)/2 {
		t.Errorf("not packed: %v, %d bytes", res.Header, len(body))
	}
	tag := res.Header.Get("ETag")
	if res, body := d.raw("/", http.Header{"If-None-Match": {tag}}); res.StatusCode != 304 || len(body) != 0 {
		t.Errorf("asked again: %d, %d bytes", res.StatusCode, len(body))
	}
	for path, want := range map[string]struct {
		status int
		kind   string
		cache  string
	}{
		"/machine/abc":       {200, "text/html; charset=utf-8", "no-cache"},
		"/assets/app-ab.js":  {200, "text/javascript; charset=utf-8", "public, max-age=31536000, immutable"},
		"/mark.svg":          {200, "image/svg+xml", "no-cache"},
		"/missing.js":        {404, "text/plain; charset=utf-8", ""},
		"/../server.go":      {404, "text/plain; charset=utf-8", ""},
		"/assets/%2e%2e/x.y": {404, "text/plain; charset=utf-8", ""},
	} {
		res, _ := d.raw(path, nil)
		if res.StatusCode != want.status || res.Header.Get("Content-Type") != want.kind || want.status == 200 && res.Header.Get("Cache-Control") != want.cache {
			t.Errorf("%s: %d %s %s", path, res.StatusCode, res.Header.Get("Content-Type"), res.Header.Get("Cache-Control"))
		}
	}
}
