-- 0001 record: what happened on the class day, and what belongs to it.
-- Written in the SQL that SQLite and PostgreSQL share. Times are microseconds since 1970, UTC.

-- Which program first wrote which shape of which kind of entry, so that an older program that meets
-- one can say what it would take to read it.
create table shape (
    kind    text   not null,
    shape   bigint not null check (shape > 0),
    program text   not null,
    primary key (kind, shape)
);

create table investigation (
    id    bigint primary key,
    title text   not null,
    kind  text   not null check (kind in ('real', 'rehearsal', 'invented')),
    made  bigint not null
);

-- Every version of a plan as the text that was saved.
create table plan (
    investigation bigint not null references investigation (id),
    version       bigint not null check (version > 0),
    body          text   not null,
    saved         bigint not null,
    primary key (investigation, version)
);

-- Rows are added, never changed: a trigger on each engine refuses it.
create table entry (
    seq           bigint primary key,          -- rises over all investigations, without gaps
    investigation bigint not null references investigation (id),
    key           text   not null unique,      -- made where the entry was typed
    subject       text   not null check (subject in ('investigation', 'period', 'group', 'bag')),
    period        text,                        -- of a period or group
    grp           bigint,                      -- of a group
    bag           text,                        -- code of a bag
    kind          text   not null,
    measured      bigint not null,
    arrived       bigint not null,
    who           text   not null check (who in ('teacher', 'group', 'aide', 'import', 'program')),
    who_period    text,
    who_group     bigint,
    shape         bigint not null check (shape > 0),  -- layout of the body
    body          text   not null              -- JSON; only src/wire reads it
);
create index entry_of_investigation on entry (investigation, seq);

-- What a person wrote in words: the only table from which names and sentences are deleted.
create table words (
    key           text   primary key,          -- random; says nothing
    investigation bigint not null references investigation (id),
    kind          text   not null,
    body          text   not null
);
create index words_of_investigation on words (investigation);

-- Keys of words that were deleted, so that a backup that could not be reached is cleaned later.
create table forgotten (
    key text primary key
);

create table backup (
    path text   primary key,
    made bigint not null
);

create table secret (
    name  text primary key,
    value text not null
);

create table setting (
    name  text primary key,
    value text not null
);

-- Who is signed in. The token itself is never stored.
create table session (
    token_hash    text   primary key,          -- SHA-256, hexadecimal
    role          text   not null,
    investigation bigint references investigation (id),
    period        text,
    grp           bigint,
    made          bigint not null,
    seen          bigint not null,
    ends          bigint not null
);

-- What is typed or scanned to come in.
create table code (
    code          text   primary key,
    role          text   not null,
    investigation bigint not null references investigation (id),
    period        text,
    grp           bigint,
    made          bigint not null,
    ends          bigint
);
