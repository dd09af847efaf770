-- 0003 pilot: what pilots found belongs to the version of the plan that forecasts go by. Saving a plan
-- carries it along; a pilot is another version with the same body.
alter table plan add column lots text not null default '';      -- what is known of each lot, TOML
alter table plan add column readings text not null default '';  -- what the newest pilot read, as typed
