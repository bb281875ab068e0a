-- Browsers that have shown the token of a running program. Only the SHA-256 of
-- the cookie is kept.
CREATE TABLE session (
  digest TEXT PRIMARY KEY,
  made   TEXT NOT NULL -- RFC 3339, UTC
) STRICT;
