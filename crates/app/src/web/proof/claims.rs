//! What groups claim: handed in by the group, seen by the teacher with what the data say, read by others without names.

use super::class::{Answer, Call, Class, DURING_1};
use crate::desk::room::Kind;

async fn as_group(class: &Class, token: &str, path: &str, body: Option<&str>) -> Answer {
    let call = match body {
        Some(body) => Call::form(class, path, body),
        None => Call::get(path),
    };
    class.call(call.cookie("barm-bench", token)).await
}

async fn as_teacher(class: &Class, token: &str, body: Option<&str>) -> String {
    let path = format!("/i/{}/claims", class.room.id);
    let call = match body {
        Some(body) => Call::form(class, &path, body),
        None => Call::get(&path),
    };
    class.call(call.cookie("barm-teacher", token)).await.body
}

/// The first thing that the page offers to claim about, as a form sends it.
fn about(page: &str) -> String {
    let options = page.split("<option value=\"").skip(1);
    let mut values = options.filter_map(|rest| rest.split('"').next());
    let value = values.find(|value| value.contains('/')).expect("something to claim about");
    value.replace("&amp;", "%26").replace(' ', "+")
}

#[tokio::test]
async fn a_claim_is_handed_in_and_stands_beside_what_the_data_say() {
    let class = Class::at(DURING_1, Kind::Real);
    let (teacher, own, other) = (class.teacher(), class.group("1", 3), class.group("1", 1));
    let empty = as_teacher(&class, &teacher, None).await;
    assert!(empty.contains("No claim yet"), "{empty}");
    let page = as_group(&class, &own, "/claim", None).await.body;
    let wrote = format!(
        "about={}&says=more&by=6+mm&evidence=It+rose+99+mm&reasoning=Yeast+eats+it",
        about(&page)
    );
    // Looked over, it waits at the group alone.
    let looked = as_group(&class, &own, "/claim", Some(&format!("{wrote}&do=look"))).await;
    assert!(looked.body.contains("Yeast eats it") && !looked.body.contains("It is handed in"));
    assert!(as_teacher(&class, &teacher, None).await.contains("No claim yet"));
    let handed = as_group(&class, &own, "/claim", Some(&format!("{wrote}&do=hand-in"))).await;
    assert!(handed.body.contains("It is handed in"), "{}", handed.body);
    let seen = as_teacher(&class, &teacher, None).await;
    assert!(seen.contains("Yeast eats it") && seen.contains("Period 1, group 3"), "{seen}");
    assert!(seen.contains("“99 mm” was not found"), "a number that stands nowhere: {seen}");
    assert!(seen.contains("Nothing here is a mark"));
    let foreign = as_group(&class, &other, "/claim", None).await.body;
    assert!(!foreign.contains("Yeast eats it"), "{foreign}");
}

#[tokio::test]
async fn what_cannot_be_a_claim_is_said_and_kept_on_the_page() {
    let class = Class::at(DURING_1, Kind::Real);
    let (teacher, own) = (class.teacher(), class.group("1", 3));
    let page = as_group(&class, &own, "/claim", None).await.body;
    let about = about(&page);
    for (wrote, says) in [
        (format!("about={about}&says=&evidence=Mine"), "Say if it rose more or less"),
        ("about=&says=more&evidence=Mine".to_owned(), "Choose what your claim is about"),
        (format!("about={about}&says=more&by=many&evidence=Mine"), "Write by how much"),
        (
            format!("about={about}&says=no-readable-difference&by=6+mm&evidence=Mine"),
            "If no difference can be read",
        ),
        (
            format!("about={about}&says=more&evidence=Mine&reasoning={}", "a".repeat(5000)),
            "A text is too long",
        ),
    ] {
        let answer =
            as_group(&class, &own, "/claim", Some(&format!("{wrote}&do=hand-in"))).await;
        assert_eq!(answer.status, 200);
        assert!(answer.body.contains(says), "{says}: {}", answer.body);
        assert!(answer.body.contains("Mine"), "nothing typed is lost");
    }
    // More than a page may send at all.
    let huge = format!("about={about}&says=more&evidence={}&do=hand-in", "a".repeat(100_000));
    assert_eq!(as_group(&class, &own, "/claim", Some(&huge)).await.status, 413);
    assert!(as_teacher(&class, &teacher, None).await.contains("No claim yet"));
}

/// Before results are open, a group can claim about the kinds of its own bags only, whatever it sends.
#[tokio::test]
async fn nobody_claims_about_kinds_of_others() {
    let class = Class::at(DURING_1, Kind::Real);
    let [own, other] = [1, 3].map(|group| class.group("1", group));
    let mine = as_group(&class, &own, "/claim", None).await.body;
    let theirs = about(&as_group(&class, &other, "/claim", None).await.body);
    assert_ne!(about(&mine), theirs, "they make different kinds");
    let wrote = format!("about={theirs}&says=more&evidence=Mine&do=hand-in");
    let answer = as_group(&class, &own, "/claim", Some(&wrote)).await;
    assert!(answer.body.contains("Choose what your claim is about"), "{}", answer.body);
}

#[tokio::test]
async fn others_read_it_without_names_once_the_teacher_lets_them() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let tokens = [1, 2, 3].map(|group| class.group("1", group));
    for (token, words) in tokens.iter().zip(["Apricot", "Bramble", "Cherry"]) {
        let about = about(&as_group(&class, token, "/claim", None).await.body);
        let wrote = format!("about={about}&says=less&evidence={words}&do=hand-in");
        as_group(&class, token, "/claim", Some(&wrote)).await;
    }
    let first = as_group(&class, &tokens[0], "/claim", None).await.body;
    assert!(!first.contains("Bramble") && !first.contains("Cherry"), "not opened yet");
    let early = "place=0&convinces=nothing&asks=why";
    assert_eq!(as_group(&class, &tokens[0], "/claim/read", Some(early)).await.status, 404);
    let opened = as_teacher(&class, &teacher, Some("period=1&do=open")).await;
    assert!(opened.contains("3 groups of period 1 read each other"), "{opened}");
    // Of three, each reads the two others.
    let first = as_group(&class, &tokens[0], "/claim", None).await.body;
    assert!(first.contains("Bramble") && first.contains("Cherry"), "{first}");
    assert!(!first.contains("group 2") && !first.contains("group 3"), "{first}");
    let said = "place=0&convinces=The+numbers&asks=How+many+bags";
    let kept = as_group(&class, &tokens[0], "/claim/read", Some(said)).await;
    assert_eq!(kept.status, 303);
    let beyond = "place=2&convinces=x&asks=y";
    assert_eq!(as_group(&class, &tokens[0], "/claim/read", Some(beyond)).await.status, 404);
    let heard = [&tokens[1], &tokens[2]].map(|token| as_group(&class, token, "/claim", None));
    let mut heard_by = 0;
    for page in heard {
        let page = page.await.body;
        heard_by += usize::from(page.contains("The numbers"));
        assert!(!page.contains("Group 1"), "{page}");
    }
    assert_eq!(heard_by, 1, "one of them was read");
    let seen = as_teacher(&class, &teacher, None).await;
    assert!(seen.contains("Group 1:") && seen.contains("How many bags"), "{seen}");
    let closed = as_teacher(&class, &teacher, Some("period=1&do=close")).await;
    assert!(closed.contains("no longer see"), "{closed}");
    let first = as_group(&class, &tokens[0], "/claim", None).await.body;
    assert!(!first.contains("Bramble") && !first.contains("Cherry"), "{first}");
}

#[tokio::test]
async fn marks_are_kept_offered_again_and_handed_out_as_they_were() {
    let class = Class::at(DURING_1, Kind::Real);
    let (teacher, own) = (class.teacher(), class.group("1", 1));
    let at = |rest: &str| format!("/i/{}/marks{rest}", class.room.id);
    let get = |rest: &str| Call::get(&at(rest)).cookie("barm-teacher", &teacher);
    let post = |rest: &str, body: &str| {
        Call::form(&class, &at(rest), body).cookie("barm-teacher", &teacher)
    };
    let page = class.call(get("/1/1")).await;
    assert_eq!(page.status, 200);
    assert!(page.body.contains("This group handed in no claim"), "{}", page.body);
    assert_eq!(class.call(get("/1/99")).await.status, 404);
    let strands: Vec<String> = page
        .body
        .split("name=\"remark-")
        .skip(1)
        .filter_map(|rest| rest.split('"').next().map(str::to_owned))
        .collect();
    assert_eq!(strands.len(), 8, "{strands:?}");
    let all = |level: u8| -> String {
        strands.iter().map(|strand| format!("level-{strand}={level}&")).collect()
    };
    let remark = format!("remark-{}=Fine+table", strands[2]);
    let saved = class.call(post("/1/1", &format!("{}{remark}&do=next", all(3)))).await;
    assert_eq!(saved.status, 303);
    assert!(saved.header("location").ends_with("/marks/1/2"), "{}", saved.header("location"));
    let next = class.call(get("/1/2")).await.body;
    assert!(next.contains("Fine table"), "offered again: {next}");
    let list = class.call(get("")).await.body;
    assert!(list.contains("24 of 32"), "{list}");
    // What is not there is refused, and what was kept stays.
    let wrong = class.call(post("/1/1", &format!("level-{}=7&do=stay", strands[0]))).await.body;
    assert!(wrong.contains("a level is 0"), "{wrong}");
    let group = || Call::get("/claim").cookie("barm-bench", &own);
    assert!(
        !class.call(group()).await.body.contains("Fine table"),
        "not before it is handed out"
    );
    let out = class.call(post("", "period=1")).await.body;
    assert!(out.contains("1 group of period 1 sees its marks now"), "{out}");
    let seen = class.call(group()).await.body;
    assert!(seen.contains("Fine table") && seen.contains("Your teacher wrote"), "{seen}");
    class.call(post("/1/1", &format!("{}remark-{}=Other&do=stay", all(1), strands[2]))).await;
    let seen = class.call(group()).await.body;
    assert!(seen.contains("Fine table") && !seen.contains("Other"), "the copy stays as it was");
    let other = class.group("1", 2);
    let foreign = Call::get("/claim").cookie("barm-bench", &other);
    assert!(!class.call(foreign).await.body.contains("Fine table"));
}

#[tokio::test]
async fn the_rubric_takes_the_teachers_own_words_and_refuses_half_of_one() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let path = format!("/i/{}/marks/rubric", class.room.id);
    let call = |body: Option<&str>| {
        let call = match body {
            Some(body) => Call::form(&class, &path, body),
            None => Call::get(&path),
        };
        call.cookie("barm-teacher", &teacher)
    };
    let first = class.call(call(None)).await.body;
    assert!(first.contains("name=\"name-question\""), "{first}");
    let levels = "level-0=a&level-1=b&level-2=c&level-3=d";
    let half = format!("{levels}&name-question=Asking&looks-question-0=none&do=save");
    let refused = class.call(call(Some(&half))).await.body;
    assert!(
        refused.contains("Nothing is saved yet") && refused.contains("Asking"),
        "{refused}"
    );
    assert!(class.call(call(None)).await.body.contains("name=\"name-plan\""), "as it was");
    let looks = |id: &str| -> String {
        (0..4).map(|at| format!("&looks-{id}-{at}=like+{at}")).collect()
    };
    let whole = format!(
        "{levels}&name-question=Asking{}&name-new=Tidiness{}&do=save",
        looks("question"),
        looks("new")
    );
    let saved = class.call(call(Some(&whole))).await.body;
    assert!(saved.contains("Tidiness") && !saved.contains("Nothing is saved yet"), "{saved}");
    let page = format!("/i/{}/marks/1/1", class.room.id);
    let page = class.call(Call::get(&page).cookie("barm-teacher", &teacher)).await.body;
    assert!(page.contains("Asking") && page.contains("Tidiness"), "{page}");
    assert!(!page.contains("remark-plan"), "strands with an empty name are gone");
    let again = class.call(call(Some("do=again"))).await.body;
    assert!(again.contains("name=\"name-plan\"") && !again.contains("Tidiness"), "{again}");
}
