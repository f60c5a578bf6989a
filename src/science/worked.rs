//! How an answer was worked out: inputs, steps, sources, and what the uncertainty is made of.

use crate::quantity::{
    AlcoholByVolume, Attenuation, CarbonDioxideVolumes, Celsius, Grams, Gravity, Hours,
    Kilopascals, Litres, Metres, Plato, SpecificGravity,
};

/// A value in a working, with its kind, so that the page can write it in the brewer's units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// A gravity as it was read.
    Read(Gravity),
    /// A specific gravity that was worked out.
    Gravity(SpecificGravity),
    /// A difference of gravities, in points (thousandths).
    Points(f64),
    /// Extract.
    Extract(Plato),
    /// A temperature.
    Temperature(Celsius),
    /// A volume of liquid.
    Volume(Litres),
    /// A mass.
    Mass(Grams),
    /// Carbon dioxide in the beer.
    Gas(CarbonDioxideVolumes),
    /// A pressure.
    Pressure(Kilopascals),
    /// Strength.
    Strength(AlcoholByVolume),
    /// Attenuation.
    Attenuation(Attenuation),
    /// Height above the sea.
    Height(Metres),
    /// A length of time.
    Time(Hours),
    /// Any other number: its value, decimals to write and unit.
    Number(f64, usize, &'static str),
}

macro_rules! amounts {
    ($($quantity:ident => $variant:ident),+ $(,)?) => {
        $(impl From<$quantity> for Amount {
            fn from(value: $quantity) -> Self { Self::$variant(value) }
        })+
    };
}
amounts! {
    Gravity => Read, SpecificGravity => Gravity, Plato => Extract, Celsius => Temperature,
    Litres => Volume, Grams => Mass, CarbonDioxideVolumes => Gas, Kilopascals => Pressure,
    AlcoholByVolume => Strength, Attenuation => Attenuation, Metres => Height, Hours => Time,
}

/// What a step or a doubt is about. The words live with the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs)] // each name is the thing itself
pub enum Term {
    AirExchange,
    AirPressure,
    AlcoholByMass,
    AlcoholContent,
    AlcoholDifference,
    AmountOfYeastFromCells,
    AmountOfYeastFromMaker,
    ApparentAttenuation,
    ApparentExtract,
    BathTemperature,
    BeerVolume,
    BlendTemperature,
    BottleHeadspace,
    CarbonDioxideAlreadyIn,
    CarbonDioxideFromPriming,
    CarbonDioxideStillToCome,
    CarbonDioxideTarget,
    CarbonDioxideToAdd,
    CarbonDioxideTotal,
    CommonRuleStrength,
    CoolingRate,
    CorrectedGravity,
    CorrectedInstrumentReading,
    DutyTableStrength,
    ExpectedEnd,
    ExtractFermented,
    ExtractMass,
    ExtractShare,
    FinalGravity,
    FoamOrGas,
    ForecastEnd,
    GasBusiestDay,
    GasInRoom,
    GasMade,
    GravityAtReference,
    GravityGap,
    HeadspaceAir,
    HeatLoss,
    HeatOfParts,
    HeatRate,
    HeightAboveSea,
    HistoryOfTheBeer,
    IceMass,
    IngredientMass,
    InstrumentOffset,
    InstrumentReference,
    LiquidDensity,
    ModelError,
    OriginalExtract,
    OriginalGravity,
    OxygenByShaking,
    OxygenInWater,
    OxygenInWort,
    PlainCorrection,
    PointsLeft,
    PressureOverOutside,
    PrimingSugar,
    ReadingError,
    ReadingsUsed,
    RealAttenuation,
    RealExtract,
    RefractometerShows,
    RiseOverRoom,
    RoomSize,
    RoomTemperature,
    SampleTemperature,
    Scale,
    SpreadOfRules,
    SugarPerVolume,
    SugarYield,
    TargetTemperature,
    TimeBetween,
    VolumeAfter,
    WarmestTemperature,
    WaterToAdd,
    WaterVapour,
    WortFactor,
    WortTemperature,
    YeastCells,
}

/// Where a rule comes from. The page writes the reference out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Source {
    AlcoholFactorTable,
    Balling1865,
    CommonPractice,
    IcumsaSps4,
    Iso1768,
    Iapws,
    OimlR22,
    SpeersQuotient,
    StandardAtmosphere,
    SugarHeat,
    Tabarie,
    UkDutyTable,
    Weiss1974,
    WeissPrice1980,
    HenryLaw,
    NewtonCooling,
    MakersDose,
    Stoichiometry,
    Propagation,
    BensonKrause1984,
    HeatBalance,
    Niosh,
    OxfordCompanion,
    LogisticCurve,
    WeighedCurves,
}

/// One line of a working.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// What was found.
    pub term: Term,
    /// Its value.
    pub amount: Amount,
    /// How, in symbols; empty for an input.
    pub formula: &'static str,
    /// From where; `None` for an input or plain arithmetic.
    pub source: Option<Source>,
}

/// One part of the uncertainty.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Doubt {
    /// What it comes from.
    pub term: Term,
    /// One standard deviation, in the unit of the answer.
    pub sigma: f64,
}

/// The whole working of one answer.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Worked {
    /// What went in.
    pub inputs: Vec<Step>,
    /// What was done, in order.
    pub steps: Vec<Step>,
    /// What the uncertainty is made of.
    pub doubts: Vec<Doubt>,
}

impl Worked {
    /// Notes a value that went in.
    #[must_use]
    pub fn input(mut self, term: Term, amount: impl Into<Amount>) -> Self {
        self.inputs.push(Step { term, amount: amount.into(), formula: "", source: None });
        self
    }

    /// Notes a step.
    ///
    /// ```
    /// use fermentside::quantity::Litres;
    /// use fermentside::science::{Amount, Term, Worked};
    ///
    /// let whole = Worked::default()
    ///     .input(Term::BeerVolume, Litres::literal(19.0))
    ///     .step(Term::VolumeAfter, Litres::literal(23.0), "V + 4 L", None);
    /// assert_eq!(whole.steps[0].amount, Amount::Volume(Litres::literal(23.0)));
    /// ```
    #[must_use]
    pub fn step(
        mut self,
        term: Term,
        amount: impl Into<Amount>,
        formula: &'static str,
        source: impl Into<Option<Source>>,
    ) -> Self {
        self.steps.push(Step { term, amount: amount.into(), formula, source: source.into() });
        self
    }

    /// Notes one part of the uncertainty.
    #[must_use]
    pub fn doubt(mut self, term: Term, sigma: f64) -> Self {
        self.doubts.push(Doubt { term, sigma: sigma.abs() });
        self
    }

    /// All parts of the uncertainty together: independent, so added in quadrature.
    ///
    /// ```
    /// use fermentside::science::{Term, Worked};
    ///
    /// let worked = Worked::default().doubt(Term::Scale, 0.003).doubt(Term::FoamOrGas, -0.004);
    /// assert_eq!(format!("{:.4}", worked.sigma()), "0.0050");
    /// ```
    #[must_use]
    pub fn sigma(&self) -> f64 {
        self.doubts.iter().fold(0.0, |sum: f64, doubt| sum.hypot(doubt.sigma))
    }
}
