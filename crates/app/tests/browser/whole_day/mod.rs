//! A whole period in browsers at once: the teacher's run page, the wall, groups on their devices.
//! Every height is typed in a page. In the middle the network fails, the server dies and comes back
//! elsewhere, a page is loaded again, somebody goes back, and two devices write for one bag.

mod device;
mod hall;

use crate::browser::Browser;
use crate::{skip, times};
use barm_domain::code::BagCode;
use barm_domain::record::{Entry, Subject, What, Who};
use device::Device;
use hall::{Hall, PERIOD};
use std::collections::BTreeMap;

/// Heights of each bag by device, in the order in which they were typed (mm).
type Typed = BTreeMap<BagCode, Vec<f64>>;

#[test]
fn a_period_in_browsers_loses_nothing_and_counts_everything_once() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("a whole period in browsers", why),
    };
    let groups = u32::try_from(times(2, 8, 8)).expect("few");
    let mut hall = Hall::open(groups, times(40, 20, 20));
    let (run, wall) = (browser.here(), browser.window());
    hall.sign_in(&browser);
    browser.open(&hall.at("localhost", &format!("/i/1/run/{PERIOD}")));
    browser.click("#begin");
    browser.until("return document.querySelector('[data-stage=running]') !== null;");
    browser.turn_to(&wall);
    hall.come_in(&browser, &hall.wall_code);
    let mut devices: Vec<Device> =
        (1..=groups).map(|group| Device::join(&browser, &hall, group)).collect();
    let (bag, heights) = device::two_at_once(&browser, &hall, &mut devices[1]);
    for device in &mut devices {
        device.begin(&browser);
    }
    browser.turn_to(&run);
    choose(&browser, bag, heights);
    let zero = hall.minute();
    let since = |hall: &Hall| hall.minute() - zero;
    let until = |hall: &Hall, devices: &mut [Device], minute: f64| {
        while since(hall) < minute {
            for device in &mut *devices {
                device.work(&browser);
            }
        }
    };
    // The first device is out of reach for ten minutes of the class.
    until(&hall, &mut devices, 2.0);
    devices[0].network(&browser, false);
    until(&hall, &mut devices, 5.0);
    devices[1].load_again_in_the_middle(&browser);
    until(&hall, &mut devices, 9.0);
    devices[1].go_back_and_return(&browser, &hall);
    until(&hall, &mut devices, 12.0);
    assert!(devices[0].kept(&browser) > 0, "it holds what it typed meanwhile");
    devices[0].network(&browser, true);
    devices[0].until_saved(&browser);
    // The plug is pulled; the groups type on; the program comes back at another port.
    hall.stop();
    until(&hall, &mut devices, 16.5);
    hall.come_back();
    browser.turn_to(&wall);
    browser.open(&hall.at("localhost", "/wall"));
    let said = on_the_wall(&browser, &hall);
    for (number, device) in (1..).zip(&mut devices) {
        if number == 2 {
            device.move_elsewhere(&browser, &hall, number);
        } else {
            device.move_to(&browser, &hall, &said);
        }
    }
    browser.turn_to(&run);
    browser.open(&hall.at("localhost", &format!("/i/1/run/{PERIOD}")));
    browser.turn_to(&wall);
    until(&hall, &mut devices, 28.0);
    for device in &mut devices {
        device.until_saved(&browser);
    }
    browser.turn_to(&wall);
    browser.until("return document.querySelector('main.wall ruler, main.wall svg') !== null;");
    let typed: Typed = devices.iter().flat_map(|device| device.typed.clone()).collect();
    let record = hall.ended();
    judge(&record, &typed, bag, heights);
}

/// The address that stands on the wall all through the period; nothing where this computer is in
/// no network, for it would lead other devices to themselves.
fn on_the_wall(browser: &Browser, hall: &Hall) -> String {
    browser.until("return document.querySelector('main.wall') !== null;");
    let link = "return document.querySelector('.wall .place a')?.textContent ?? '';";
    let said = browser.run(link).as_str().unwrap_or_default().to_owned();
    let far = hall.is_in_a_network();
    assert_eq!(said.is_empty(), !far, "{said}");
    if far {
        assert_eq!(said, format!("http://{}", hall.place(&hall.host(1))));
        let square = "return document.querySelector('.wall .place svg.qr') !== null;";
        assert_eq!(browser.run(square), true);
    }
    said
}

/// The run page shows both heights of a bag; the teacher takes the first.
fn choose(browser: &Browser, bag: BagCode, heights: [f64; 2]) {
    let offers =
        format!("[...document.querySelectorAll('#needs button[value^=\"correct {bag}\"]')]");
    let [first, second] = heights.map(|mm| {
        format!("{offers}.find((one) => one.textContent.startsWith('{mm} mm, group'))")
    });
    browser.until(&format!("return {first} && {second} ? true : false;"));
    browser.run(&format!("{first}.click();"));
    browser.until(&format!("return {second} === undefined;"));
}

/// Every height that was typed is on record once, under its group; of two for one bag and minute
/// both are.
fn judge(record: &[Entry], typed: &Typed, twice: BagCode, rivals: [f64; 2]) {
    let mut found: Typed = BTreeMap::new();
    for entry in record {
        let (Subject::Bag(code), Who::Group { group, .. }) = (&entry.subject, &entry.who)
        else {
            continue;
        };
        let (What::Zero { height_mm } | What::Reading { height_mm, .. }) = entry.what else {
            continue;
        };
        assert_eq!(*group, u32::from(code.group()), "{code} was written by its own group");
        found.entry(*code).or_default().push(height_mm);
    }
    let sorted = |heights: &Typed| -> Typed {
        let mut all = heights.clone();
        all.values_mut().for_each(|heights| heights.sort_by(f64::total_cmp));
        all
    };
    let (found, typed) = (sorted(&found), sorted(typed));
    for (bag, typed) in &typed {
        let own = record.iter().filter(|entry| entry.subject == Subject::Bag(*bag));
        let own: Vec<&Entry> = own.collect();
        assert_eq!(found.get(bag), Some(typed), "{bag}: {own:#?}");
    }
    assert_eq!(found.len(), typed.len(), "nobody else wrote a height");
    let own = record.iter().filter(|entry| entry.subject == Subject::Bag(twice));
    let zeros = own.filter_map(|entry| match entry.what {
        What::Zero { height_mm } => Some(height_mm),
        _ => None,
    });
    assert_eq!(zeros.collect::<Vec<_>>(), rivals, "both zero readings are kept");
    // Nothing else was asked twice: keys are of their own, however often they were sent.
    let mut keys: Vec<_> = record.iter().map(|entry| entry.key).collect();
    keys.sort_unstable();
    let all = keys.len();
    keys.dedup();
    assert_eq!(keys.len(), all);
}
