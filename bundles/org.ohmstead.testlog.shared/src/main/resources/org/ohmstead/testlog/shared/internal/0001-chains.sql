-- Copyright 2026 the Ohmstead authors.
-- SPDX-License-Identifier: Apache-2.0
-- The shared log of a laboratory: chains of entries that only ever grow, and the rights to them.

DO $roles$
DECLARE
    wanted text;
BEGIN
    FOREACH wanted IN ARRAY ARRAY['ohmstead_reader', 'ohmstead_operator', 'ohmstead_lead'] LOOP
        IF NOT EXISTS (SELECT FROM pg_catalog.pg_roles WHERE rolname = wanted) THEN
            EXECUTE format('CREATE ROLE %I NOLOGIN', wanted);
        END IF;
    END LOOP;
    -- Roles belong to the whole server: another database on it may have brought them already.
    IF NOT pg_catalog.pg_has_role('ohmstead_operator', 'ohmstead_reader', 'USAGE') THEN
        GRANT ohmstead_reader TO ohmstead_operator;
    END IF;
    IF NOT pg_catalog.pg_has_role('ohmstead_lead', 'ohmstead_operator', 'MEMBER WITH ADMIN OPTION') THEN
        GRANT ohmstead_operator TO ohmstead_lead WITH ADMIN OPTION;
    END IF;
    IF NOT pg_catalog.pg_has_role('ohmstead_lead', 'ohmstead_reader', 'MEMBER WITH ADMIN OPTION') THEN
        GRANT ohmstead_reader TO ohmstead_lead WITH ADMIN OPTION;
    END IF;
END
$roles$;

CREATE TABLE ohmstead.chain (
    id text PRIMARY KEY CHECK (id ~ '^[0-9a-f]{64}$'),
    parent_hash text NOT NULL CHECK (parent_hash ~ '^[0-9a-f]{64}$'),
    first_seq bigint NOT NULL CHECK (first_seq >= 1),
    place bigint GENERATED ALWAYS AS IDENTITY UNIQUE,
    bench text NOT NULL CHECK (bench <> ''),
    project text NOT NULL,
    amplifier text NOT NULL,
    created_at timestamptz NOT NULL,
    created_by text NOT NULL
);
COMMENT ON TABLE ohmstead.chain IS
    'A chain of entries: id is the hash of the first entry it holds; parent_hash the hash that this entry continues, zeros or of an entry of another chain.';

CREATE TABLE ohmstead.entry (
    chain text NOT NULL REFERENCES ohmstead.chain (id),
    seq bigint NOT NULL CHECK (seq >= 1),
    kind text NOT NULL,
    entry_id text NOT NULL,
    recorded_at text NOT NULL,
    body text NOT NULL,
    previous_hash text NOT NULL,
    hash text NOT NULL UNIQUE CHECK (hash ~ '^[0-9a-f]{64}$'),
    received_at timestamptz NOT NULL,
    received_by text NOT NULL,
    PRIMARY KEY (chain, seq),
    UNIQUE (chain, entry_id)
);
COMMENT ON TABLE ohmstead.entry IS
    'Entries as the benches wrote them. hash = SHA-256 of previous_hash, seq, kind, entry_id, recorded_at and body in UTF-8 with a line feed between them.';

CREATE TABLE ohmstead.chain_mark (
    number bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    chain text NOT NULL REFERENCES ohmstead.chain (id),
    mark text NOT NULL CHECK (mark IN ('closed', 'opened')),
    reason text NOT NULL CHECK (btrim(reason) <> ''),
    made_at timestamptz NOT NULL,
    made_by text NOT NULL
);
COMMENT ON TABLE ohmstead.chain_mark IS 'The last mark of a chain counts; a closed chain takes no more entries.';
CREATE INDEX chain_mark_by_chain ON ohmstead.chain_mark (chain, number);

-- Whoever adds to a chain holds its row until the end of the transaction, so that everybody else waits.
CREATE FUNCTION ohmstead.lock_chain(wanted text)
    RETURNS TABLE (first_seq bigint, last_seq bigint, last_hash text, closed_because text)
    LANGUAGE plpgsql VOLATILE SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $guard$
BEGIN
    PERFORM 1 FROM ohmstead.chain c WHERE c.id = wanted FOR UPDATE;
    RETURN QUERY
        SELECT c.first_seq, coalesce(e.seq, c.first_seq - 1), coalesce(e.hash, c.parent_hash),
            CASE WHEN m.mark = 'closed' THEN m.reason END
        FROM ohmstead.chain c
        LEFT JOIN LATERAL (SELECT x.seq, x.hash FROM ohmstead.entry x WHERE x.chain = c.id
            ORDER BY x.seq DESC LIMIT 1) e ON true
        LEFT JOIN LATERAL (SELECT y.mark, y.reason FROM ohmstead.chain_mark y WHERE y.chain = c.id
            ORDER BY y.number DESC LIMIT 1) m ON true
        WHERE c.id = wanted;
END
$guard$;

CREATE FUNCTION ohmstead.refuse_change() RETURNS trigger
    LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $guard$
BEGIN
    RAISE EXCEPTION 'What stands in the shared log is never changed or deleted.' USING ERRCODE = 'OHM02';
END
$guard$;

CREATE FUNCTION ohmstead.check_chain() RETURNS trigger
    LANGUAGE plpgsql VOLATILE SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $guard$
DECLARE
    parent record;
    head record;
BEGIN
    IF EXISTS (SELECT FROM ohmstead.entry e WHERE e.hash = NEW.id) THEN
        RAISE EXCEPTION 'The entry % stands in a chain already.', NEW.id USING ERRCODE = 'OHM06';
    END IF;
    IF NEW.parent_hash = repeat('0', 64) THEN
        IF NEW.first_seq <> 1 THEN
            RAISE EXCEPTION 'A chain that continues nothing begins with number 1.' USING ERRCODE = 'OHM05';
        END IF;
    ELSE
        SELECT e.chain, e.seq INTO parent FROM ohmstead.entry e WHERE e.hash = NEW.parent_hash;
        IF NOT FOUND THEN
            RAISE EXCEPTION 'The entry % that the chain continues is not there.', NEW.parent_hash
                USING ERRCODE = 'OHM05';
        END IF;
        SELECT * INTO head FROM ohmstead.lock_chain(parent.chain);
        IF head.last_hash = NEW.parent_hash AND head.closed_because IS NOT NULL THEN
            RAISE EXCEPTION '%', head.closed_because USING ERRCODE = 'OHM03';
        END IF;
        IF NEW.first_seq <> parent.seq + 1 THEN
            RAISE EXCEPTION 'The chain does not begin directly behind the entry that it continues.'
                USING ERRCODE = 'OHM05';
        END IF;
    END IF;
    NEW.created_at := clock_timestamp();
    NEW.created_by := session_user;
    RETURN NEW;
END
$guard$;

CREATE FUNCTION ohmstead.check_entry() RETURNS trigger
    LANGUAGE plpgsql VOLATILE SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $guard$
DECLARE
    head record;
BEGIN
    SELECT * INTO head FROM ohmstead.lock_chain(NEW.chain);
    IF NOT FOUND THEN
        RAISE EXCEPTION 'There is no chain %.', NEW.chain USING ERRCODE = 'OHM01';
    END IF;
    IF head.closed_because IS NOT NULL THEN
        RAISE EXCEPTION '%', head.closed_because USING ERRCODE = 'OHM03';
    END IF;
    IF NEW.seq IS DISTINCT FROM head.last_seq + 1 OR NEW.previous_hash IS DISTINCT FROM head.last_hash
            OR (NEW.seq = head.first_seq AND NEW.hash IS DISTINCT FROM NEW.chain) THEN
        RAISE EXCEPTION 'The entry number % does not continue its chain.', NEW.seq USING ERRCODE = 'OHM01';
    END IF;
    IF NEW.hash IS DISTINCT FROM encode(sha256(convert_to(concat_ws(E'\n', NEW.previous_hash, NEW.seq, NEW.kind,
            NEW.entry_id, NEW.recorded_at, NEW.body), 'UTF8')), 'hex') THEN
        RAISE EXCEPTION 'The content of the entry number % does not give its hash.', NEW.seq USING ERRCODE = 'OHM04';
    END IF;
    NEW.received_at := clock_timestamp();
    NEW.received_by := session_user;
    RETURN NEW;
END
$guard$;

CREATE FUNCTION ohmstead.check_mark() RETURNS trigger
    LANGUAGE plpgsql VOLATILE SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $guard$
DECLARE
    head record;
BEGIN
    SELECT * INTO head FROM ohmstead.lock_chain(NEW.chain);
    IF NOT FOUND THEN
        RAISE EXCEPTION 'There is no chain %.', NEW.chain USING ERRCODE = 'OHM01';
    END IF;
    IF (NEW.mark = 'closed') = (head.closed_because IS NOT NULL) THEN
        RAISE EXCEPTION 'The chain is % already.', CASE NEW.mark WHEN 'closed' THEN 'closed' ELSE 'open' END
            USING ERRCODE = 'OHM07';
    END IF;
    NEW.made_at := clock_timestamp();
    NEW.made_by := session_user;
    RETURN NEW;
END
$guard$;

CREATE TRIGGER chain_fits BEFORE INSERT ON ohmstead.chain
    FOR EACH ROW EXECUTE FUNCTION ohmstead.check_chain();
CREATE TRIGGER chain_is_never_changed BEFORE UPDATE OR DELETE OR TRUNCATE ON ohmstead.chain
    FOR EACH STATEMENT EXECUTE FUNCTION ohmstead.refuse_change();
CREATE TRIGGER entry_continues_its_chain BEFORE INSERT ON ohmstead.entry
    FOR EACH ROW EXECUTE FUNCTION ohmstead.check_entry();
CREATE TRIGGER entry_is_never_changed BEFORE UPDATE OR DELETE OR TRUNCATE ON ohmstead.entry
    FOR EACH STATEMENT EXECUTE FUNCTION ohmstead.refuse_change();
CREATE TRIGGER mark_fits BEFORE INSERT ON ohmstead.chain_mark
    FOR EACH ROW EXECUTE FUNCTION ohmstead.check_mark();
CREATE TRIGGER mark_is_never_changed BEFORE UPDATE OR DELETE OR TRUNCATE ON ohmstead.chain_mark
    FOR EACH STATEMENT EXECUTE FUNCTION ohmstead.refuse_change();
ALTER TABLE ohmstead.chain ENABLE ALWAYS TRIGGER chain_fits;
ALTER TABLE ohmstead.chain ENABLE ALWAYS TRIGGER chain_is_never_changed;
ALTER TABLE ohmstead.entry ENABLE ALWAYS TRIGGER entry_continues_its_chain;
ALTER TABLE ohmstead.entry ENABLE ALWAYS TRIGGER entry_is_never_changed;
ALTER TABLE ohmstead.chain_mark ENABLE ALWAYS TRIGGER mark_fits;
ALTER TABLE ohmstead.chain_mark ENABLE ALWAYS TRIGGER mark_is_never_changed;

REVOKE ALL ON ALL FUNCTIONS IN SCHEMA ohmstead FROM PUBLIC;
GRANT USAGE ON SCHEMA ohmstead TO ohmstead_reader;
GRANT SELECT ON ohmstead.schema_version, ohmstead.chain, ohmstead.entry, ohmstead.chain_mark TO ohmstead_reader;
GRANT EXECUTE ON FUNCTION ohmstead.lock_chain(text) TO ohmstead_operator;
GRANT INSERT (id, parent_hash, first_seq, bench, project, amplifier) ON ohmstead.chain TO ohmstead_operator;
GRANT INSERT (chain, seq, kind, entry_id, recorded_at, body, previous_hash, hash) ON ohmstead.entry
    TO ohmstead_operator;
GRANT INSERT (chain, mark, reason) ON ohmstead.chain_mark TO ohmstead_lead;
