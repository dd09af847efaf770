//! An invented school's export, table by table, to be changed and zipped.

use crate::by_hand::{deflated, zip};
use barm_documents::bundle::Refused;
use barm_documents::roster::{Taken, Version, read};
use jiff::civil::date;
use std::collections::BTreeMap;

/// An export: tables by name.
#[derive(Clone)]
pub(crate) struct School(pub(crate) BTreeMap<&'static str, Vec<u8>>);

const CLASSES: &str = "\
sourcedId,status,dateLastModified,title,grades,courseSourcedId,classCode,classType,location,schoolSourcedId,termSourcedIds,subjects,subjectCodes,periods
c1,,,\"Science 8, period 1\",08,k1,SCI8-1,scheduled,Room 12,o1,\"t1,t2\",Science,,1
c2,,,Science 8 period 3,08,k1,,scheduled,,o1,t1,,,3
c3,,,Homeroom,08,k1,,homeroom,,o1,t1,,,
";

const ENROLLMENTS: &str = "\
sourcedId,status,dateLastModified,classSourcedId,schoolSourcedId,userSourcedId,role,primary,beginDate,endDate
e1,,,c1,o1,s1,student,,,
e2,,,c1,o1,s2,student,,2026-08-20,2027-06-10
e3,,,c2,o1,s3,student,,,
e4,,,c1,o1,u9,teacher,true,,
e5,,,c2,o1,s1,student,,,2026-12-20
";

const USERS_1_1: &str = "\
sourcedId,status,dateLastModified,enabledUser,orgSourcedIds,role,username,userIds,givenName,familyName,middleName,identifier,email,sms,phone,agentSourcedIds,grades,password
s1,,,true,o1,student,ann,,Ann,Invented,Q,555-SECRET,ann@example.invalid,,555-0100,g1,08,hunter2
s2,,,true,o1,student,bea,,\"Bea \"\"B\"\"\",\"Made
Up\",,,,,,,08,
s3,,,true,o1,student,cy,,Cy,Nobody,,,,,,,08,
u9,,,true,o1,teacher,tt,,Terry,Teacher,,,,,,,,
";

const USERS_1_2: &str = "\
sourcedId,status,dateLastModified,enabledUser,username,userIds,givenName,familyName,middleName,identifier,email,sms,phone,agentSourcedIds,grades,password,userMasterIdentifier,resourceSourcedIds,preferredGivenName,preferredMiddleName,preferredFamilyName,primaryOrgSourcedId,pronouns,metadata.bus
s1,,,true,ann,,Ann,Invented,Q,555-SECRET,ann@example.invalid,,555-0100,g1,08,hunter2,,,Annie,,,o1,,7
s2,,,true,bea,,\"Bea \"\"B\"\"\",\"Made
Up\",,,,,,,08,,,,,,,o1,,
s3,,,true,cy,,Cy,Nobody,,,,,,,08,,,,,,Somebody,o1,,
u9,,,true,tt,,Terry,Teacher,,,,,,,,,,,,,,o1,,
";

const ROLES: &str = "\
sourcedId,status,dateLastModified,userSourcedId,roleType,role,beginDate,endDate,orgSourcedId,userProfileSourcedId
r1,,,s1,primary,student,,,o1,
";

const DEMOGRAPHICS: &str = "sourcedId,status,dateLastModified,birthDate\ns1,,,2013-SECRET\n";

impl School {
    pub(crate) fn of(version: Version) -> Self {
        let manifest = format!(
            "propertyName,value\nmanifest.version,1.0\noneroster.version,{}\nfile.classes,bulk\n\
             file.enrollments,bulk\nfile.users,bulk\nfile.demographics,bulk\nfile.orgs,absent\n",
            version.word()
        );
        let users = match version {
            Version::V1_1 => USERS_1_1,
            Version::V1_2 => USERS_1_2,
        };
        let mut tables = BTreeMap::from([
            ("manifest.csv", manifest.into_bytes()),
            ("classes.csv", CLASSES.into()),
            ("enrollments.csv", ENROLLMENTS.into()),
            ("users.csv", users.into()),
            ("demographics.csv", DEMOGRAPHICS.into()),
        ]);
        if version == Version::V1_2 {
            tables.insert("roles.csv", ROLES.into());
        }
        Self(tables)
    }

    pub(crate) fn text(&self, file: &str) -> String {
        String::from_utf8(self.0[file].clone()).unwrap()
    }

    /// With other words in a table; they have to be there.
    pub(crate) fn with(mut self, file: &'static str, old: &str, new: &str) -> Self {
        let text = self.text(file);
        assert!(text.contains(old), "{old} in {file}");
        self.0.insert(file, text.replace(old, new).into_bytes());
        self
    }

    pub(crate) fn with_bytes(mut self, file: &'static str, bytes: Vec<u8>) -> Self {
        self.0.insert(file, bytes);
        self
    }

    pub(crate) fn without(mut self, file: &str) -> Self {
        assert!(self.0.remove(file).is_some());
        self
    }

    pub(crate) fn zip(&self) -> Vec<u8> {
        let parts: Vec<_> = self.0.iter().map(|(name, bytes)| deflated(name, bytes)).collect();
        zip(&parts, b"")
    }

    /// Read on 9 March 2027.
    pub(crate) fn read(&self) -> Result<Taken, Refused> {
        read(&self.zip(), date(2027, 3, 9))
    }

    pub(crate) fn taken(&self) -> Taken {
        self.read().unwrap_or_else(|refused| panic!("{refused}"))
    }

    /// Why it is refused: one sentence on one line.
    pub(crate) fn refused(&self) -> String {
        let said = self.read().expect_err("it is refused").to_string();
        assert!(said.contains("; ") && !said.contains('\n'), "{said}");
        said
    }
}

/// Sections with their students, as they are shown.
pub(crate) fn shown(taken: &Taken) -> Vec<(String, Vec<String>)> {
    let sections = taken.roster.sections().iter();
    let students = |section: &barm_domain::roster::Section| {
        section.students.iter().map(|one| one.shown.words().to_owned()).collect()
    };
    sections.map(|one| (one.title.words().to_owned(), students(one))).collect()
}
