create function entry_is_final() returns trigger language plpgsql as $$
begin raise exception 'entries are never changed or removed'; end $$;
create trigger entry_is_final before update or delete on entry
    for each row execute function entry_is_final();
create trigger entry_is_kept before truncate on entry
    for each statement execute function entry_is_final();
