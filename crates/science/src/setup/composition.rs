//! What a food or a carrier is made of.

/// Titratable acid of a food by the acid that most of it is: moles of H⁺ that a base could take
/// up, per 100 g; and the food's own pH, which tells how much of the acid its salts hold already.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Acids {
    /// Acetic acid (vinegar).
    pub acetic: f64,
    /// Malic and tartaric acid (apples, grapes, banana, maple).
    pub malic: f64,
    /// Citric and aconitic acid (citrus, cane).
    pub citric: f64,
    /// Lactic and gluconic acid (milk, honey).
    pub lactic: f64,
    /// pH of the food as it is (1), up to 6; 0 for an acid without salts, such as vinegar.
    pub ph: f64,
}

impl Acids {
    /// No acid at all.
    pub const NONE: Self = Self { acetic: 0.0, malic: 0.0, citric: 0.0, lactic: 0.0, ph: 0.0 };

    /// Acetic acid only (mol of H⁺ per 100 g).
    pub const fn acetic(acetic: f64) -> Self {
        Self { acetic, ..Self::NONE }
    }

    /// Malic and tartaric acid only (mol of H⁺ per 100 g).
    pub const fn malic(malic: f64) -> Self {
        Self { malic, ..Self::NONE }
    }

    /// Citric and aconitic acid only (mol of H⁺ per 100 g).
    pub const fn citric(citric: f64) -> Self {
        Self { citric, ..Self::NONE }
    }

    /// Lactic and gluconic acid only (mol of H⁺ per 100 g).
    pub const fn lactic(lactic: f64) -> Self {
        Self { lactic, ..Self::NONE }
    }

    /// The same acid in a food of that pH.
    pub const fn at(self, ph: f64) -> Self {
        Self { ph, ..self }
    }

    /// All of it (mol of H⁺ per 100 g).
    pub const fn sum(&self) -> f64 {
        self.acetic + self.malic + self.citric + self.lactic
    }

    /// Each of them times `factor`.
    pub const fn times(&self, factor: f64) -> Self {
        Self {
            acetic: self.acetic * factor,
            malic: self.malic * factor,
            citric: self.citric * factor,
            lactic: self.lactic * factor,
            ph: self.ph,
        }
    }
}

/// Carbohydrates and other parts of a food, in grams per 100 g of the food as used.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Composition {
    /// Water (g per 100 g).
    pub water: f64,
    /// Starch in raw granules (g per 100 g).
    pub raw_starch: f64,
    /// Gelatinized (cooked) or mechanically damaged starch (g per 100 g).
    pub cooked_starch: f64,
    /// Dextrins and other glucose chains of three units or more, but for what is known to be
    /// maltotriose (g per 100 g).
    pub dextrin: f64,
    /// Maltotriose, where it is known apart from dextrin (g per 100 g).
    pub maltotriose: f64,
    /// Raffinose and its like (g per 100 g).
    pub galactosides: f64,
    /// Maltose (g per 100 g).
    pub maltose: f64,
    /// Sucrose (g per 100 g).
    pub sucrose: f64,
    /// Lactose (g per 100 g).
    pub lactose: f64,
    /// Galactose (g per 100 g).
    pub galactose: f64,
    /// Glucose (g per 100 g).
    pub glucose: f64,
    /// Fructose (g per 100 g).
    pub fructose: f64,
    /// Table salt equivalent (g NaCl per 100 g).
    pub salt: f64,
    /// Titratable acid (mol of H⁺ per 100 g).
    pub acids: Acids,
    /// Bicarbonate, as in baking soda (mol per 100 g).
    pub bicarbonate: f64,
}

impl Composition {
    /// Nothing that counts: fat, protein, fiber.
    pub const NONE: Self = Self {
        water: 0.0,
        raw_starch: 0.0,
        cooked_starch: 0.0,
        dextrin: 0.0,
        maltotriose: 0.0,
        galactosides: 0.0,
        maltose: 0.0,
        sucrose: 0.0,
        lactose: 0.0,
        galactose: 0.0,
        glucose: 0.0,
        fructose: 0.0,
        salt: 0.0,
        acids: Acids::NONE,
        bicarbonate: 0.0,
    };

    /// Every form of starch and sugar (g per 100 g).
    pub const fn carbohydrates(&self) -> [f64; 11] {
        [
            self.raw_starch,
            self.cooked_starch,
            self.dextrin,
            self.maltotriose,
            self.galactosides,
            self.maltose,
            self.sucrose,
            self.lactose,
            self.galactose,
            self.glucose,
            self.fructose,
        ]
    }

    /// The same places, to write to.
    pub fn carbohydrates_mut(&mut self) -> [&mut f64; 11] {
        [
            &mut self.raw_starch,
            &mut self.cooked_starch,
            &mut self.dextrin,
            &mut self.maltotriose,
            &mut self.galactosides,
            &mut self.maltose,
            &mut self.sucrose,
            &mut self.lactose,
            &mut self.galactose,
            &mut self.glucose,
            &mut self.fructose,
        ]
    }
}

/// Plants whose starch granules differ in how they take heat and enzymes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Grain {
    /// Wheat.
    Wheat,
    /// Barley.
    Barley,
    /// Oat.
    Oat,
    /// Rice.
    Rice,
    /// Corn (maize).
    Corn,
    /// Sorghum.
    Sorghum,
    /// Potato.
    Potato,
    /// Cassava, as tapioca.
    Tapioca,
    /// Chickpea, bean, pea, lentil.
    Pulse,
}

impl Grain {
    /// All of them.
    pub const ALL: [Self; 9] = [
        Self::Wheat,
        Self::Barley,
        Self::Oat,
        Self::Rice,
        Self::Corn,
        Self::Sorghum,
        Self::Potato,
        Self::Tapioca,
        Self::Pulse,
    ];
}

/// An amount of one food or carrier in a bag.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Portion {
    /// What it is made of.
    pub composition: Composition,
    /// Mass (g) as planned.
    pub grams: f64,
    /// Relative standard deviation of that mass from bag to bag (1), such as 0.10 for a level spoon.
    pub dosing_sd: f64,
    /// Relative standard deviation of the carbohydrate content itself (1), common to all bags of
    /// the day: what a label or a food table leaves open.
    pub content_sd: f64,
    /// The plant that its raw starch comes from, where that is known.
    pub grain: Option<Grain>,
}

impl Portion {
    /// Changes its carbohydrate by a factor, as far as there is room beside water and salt.
    pub fn enrich(&mut self, factor: f64) {
        let part = &mut self.composition;
        let sugars: f64 = part.carbohydrates().iter().sum();
        // What is not water or salt is the most that carbohydrate can be.
        let room = (100.0 - part.water - part.salt).max(sugars);
        let factor = if sugars > 0.0 { factor.min(room / sugars) } else { 1.0 };
        for sugar in part.carbohydrates_mut() {
            *sugar *= factor;
        }
    }
}
