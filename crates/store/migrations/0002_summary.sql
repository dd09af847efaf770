-- 0002 summary: what entries add up to, so that a list need not replay them. Every row can be
-- thrown away: it is worked out anew if the last entry or the program is another.
create table summary (
    investigation bigint not null references investigation (id),
    kind          text   not null,             -- such as 'shelf' or 'bag'
    subject       text   not null,             -- code of a bag; nothing for the whole
    last          bigint not null,             -- place of the last entry that went in
    program       text   not null,
    body          text   not null,             -- JSON of the one who asks
    primary key (investigation, kind, subject)
);
