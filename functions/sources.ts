/**
 * Every source, once. "published": a reference that has been read, at least the part that is used here (its abstract,
 * its table, or its equation in a published code). "recalled": a reference from memory. "practice": common practice,
 * for which there is no source. "definition": arithmetic that needs none. "measured": worked out for this project from
 * open data, as the text says.
 */
export interface Source {
  readonly status: "published" | "recalled" | "practice" | "definition" | "measured";
  readonly text: string;
}

export const sources = {
  // common
  practice: { status: "practice", text: "Common practice, no source." },
  definition: { status: "definition", text: "By definition." },
  ownLimit: { status: "definition", text: "Your own limit." },

  // climate
  standardAtmosphere: {
    status: "published",
    text: "ICAO (1993). Manual of the ICAO Standard Atmosphere, Doc 7488/3; the same constants as the US Standard Atmosphere (1976).",
  },
  dryAdiabat: {
    status: "published",
    text: "American Meteorological Society. Glossary of Meteorology: dry-adiabatic lapse rate, approximately 9.8 K per km.",
  },
  observedLapse: {
    status: "measured",
    text: "Fall of temperature seen at 520 mountain stations with others 500 m or more below and at most 80 km away, 5th, 50th and 95th percentile, every region counted alike. CLIMAT reports 2003-2021 (Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt) and normals of NOAA, JMA and CWA.",
  },
  midRange: {
    status: "measured",
    text: "Mid-point against the reported mean at 2071 stations, monthly CLIMAT reports 2004-2020 (Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt); against the median of the hours: hourly normals of NOAA, US Government work.",
  },
  climatReports: {
    status: "measured",
    text: "Deutscher Wetterdienst, Climate Data Center: monthly CLIMAT reports from stations worldwide, 2003-2021 (CC BY 4.0). Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt.",
  },
  noaaNormals: {
    status: "measured",
    text: "United States: NOAA, climate normals 1981-2010, US Government work; thinned. Estimates add 0.6 K, the warming that twins of CLIMAT show.",
  },
  jmaNormals: {
    status: "measured",
    text: "Japan: Japan Meteorological Agency website, normals 1991-2020, edited. Estimates add 0.2 K.",
  },
  cwaNormals: {
    status: "measured",
    text: "Taiwan: Central Weather Administration, C-B0027-001, normals 1991-2020, Open Government Data License; humidity turned into vapour. Estimates add 0.2 K.",
  },
  kriging: {
    status: "published",
    text: "Kriging with external drift: Hengl, T., Heuvelink, G. B. M. & Rossiter, D. G. (2007). About regression-kriging: from equations to case studies. Computers & Geosciences 33:1301-1315 (abstract). Band by Student's t: Handcock, M. S. & Stein, M. L. (1993). A Bayesian analysis of kriging. Technometrics 35:403-410, of which the title alone was read, and as in the source of the R package DiceKriging.",
  },
  siteEstimate: {
    status: "measured",
    text: "Every station from 500 m estimated from the others, none of them within 1 km: off by 1.2 K (highs) and 1.8 K (lows), root mean square; nine months in ten inside the band.",
  },
  histospline: {
    status: "published",
    text: "A spline whose mean over each bar is the bar's, as the slope of one through the running sum: the manual of a curve fitting toolbox (Smoothing a histogram). After Boneva, L. I., Kendall, D. G. & Stefanov, I. (1971). Spline transformations. Journal of the Royal Statistical Society B 33 (from memory).",
  },
  walterLieth: {
    status: "published",
    text: "Bagnouls, F. & Gaussen, H. (1957), as a thesis quotes them: a month is dry whose rain in mm is at most twice its mean temperature in °C. Drawn so by Walter, H. & Lieth, H. (1960-1967). Klimadiagramm-Weltatlas. Fischer, Jena (from memory). Here the limit itself is not dry.",
  },
  peel2007: {
    status: "published",
    text: "Peel, M. C., Finlayson, B. L. & McMahon, T. A. (2007). Updated world map of the Köppen-Geiger climate classification. Hydrology and Earth System Sciences 11:1633-1644, Table 1, of which the variables and the limit of dryness were read. The other limits were read in the program of Beck et al. (2018); polar climates are tested before dry ones, as other rules after Beck do.",
  },
  partonLogan1981: {
    status: "published",
    text: "Parton, W. J. & Logan, J. A. (1981). A model for diurnal variation in soil and air temperature. Agricultural Meteorology 23:205-216. Air at 150 cm: a 1.86, b 2.20, c -0.17.",
  },
  hourScore: {
    status: "measured",
    text: "The model of Parton & Logan against 252 days of hourly readings at Winters, California, 2008 (the data of the R package chillR): 1.8 K root mean square, 0.7 K too warm on average.",
  },

  moeneVanDam: {
    status: "published",
    text: "Moene, A. F. & van Dam, J. C. (2014). Transport in the Atmosphere-Vegetation-Soil Continuum. Cambridge University Press, Table 2.2 (year and publisher from memory): thermal diffusivity of soils, peat and rock, after de Vries (1963) and others.",
  },
  heatEquation: {
    status: "published",
    text: "Hillel, D. (1982), as the Soil Physics Toolkit of Oklahoma State University quotes him: waves of temperature in uniform ground, whose swing falls to 1/e in each damping depth √(2 · diffusivity / ω), ω = 2π / period.",
  },

  // air and daylight
  wmo8: {
    status: "published",
    text: "World Meteorological Organization. Guide to Instruments and Methods of Observation, WMO-No. 8, Annex 4.B, as the manual of a sensor quotes it: saturation vapour pressure over water, in the pure phase. Its range of -45 to 60 °C is from memory.",
  },
  idealGas: {
    status: "definition",
    text: "Water vapour as an ideal gas, 461.5 J per kg and K.",
  },
  meeus: {
    status: "published",
    text: "Meeus, J. Astronomical Algorithms, chapter 25, as in the source of SunCalc 2 (BSD licence). Sunrise and sunset at -0.833°: the sun's radius and standard refraction.",
  },

  // condition
  theilSen: {
    status: "published",
    text: "Sen, P. K. (1968). Estimates of the regression coefficient based on Kendall's tau. Journal of the American Statistical Association 63:1379-1389 (abstract, and its example as test code has it): the median of the slopes between all pairs, its range by two of them; after Theil (1950).",
  },
  peigGreen: {
    status: "published",
    text: "Peig, J. & Green, A. J. (2009). New perspectives for estimating body condition from mass/length data: the scaled mass index as an alternative method. Oikos 118:1883-1891.",
  },

  // breeding
  duJi: {
    status: "published",
    text: "Du & Ji (2008). The effects of incubation temperature on hatching success, embryonic use of energy and hatchling morphology in the stripe-tailed ratsnake Elaphe taeniura (abstract): mean days at constant 22, 24, 27, 30 and 32 °C.",
  },
  eggThresholds: {
    status: "measured",
    text: "Straight lines of 1/days on temperature from 24 to 30 °C, fitted for this project to published means of seven colubrids in the RepDevo database (Noble et al. 2018, Scientific Data): threshold 13.9-14.7 °C in four Asian colubrids (Elaphe carinata, E. taeniura, Ptyas dhumnades, Dinodon rufozonatum); days at 26 °C from 36.9 to 71.8.",
  },
  raynal: {
    status: "published",
    text: "Raynal et al. (2022). Impact of fluctuating developmental temperatures on phenotypic traits in reptiles: a meta-analysis. Journal of Experimental Biology 225 (Suppl. 1), jeb243369 (abstract): swings help a little at cool means, harm at warm ones, wide ones more.",
  },
  singleSine: {
    status: "published",
    text: "Baskerville, G. L. & Emin, P. (1969). Rapid estimation of heat accumulation from maximum and minimum temperatures. Ecology 50:514-517, as in the source of the R package PHENTHAUproc.",
  },
  seigelFitch: {
    status: "recalled",
    text: "Seigel, R. A. & Fitch, H. S. (1984). Ecological patterns of relative clutch mass in snakes. Oecologia 61:293-301.",
  },
  iverson: {
    status: "published",
    text: "Iverson et al. (2012). Reproduction by female bullsnakes (Pituophis catenifer sayi) in the Nebraska Sandhills. Southwestern Naturalist 57:58 (abstract): a clutch is 37 % of the gravid female and 59 % of the spent one, on average.",
  },

  // winter
  andrewsPough: {
    status: "published",
    text: "Andrews & Pough (1985). Physiological Zoology 58:214-231, eq. 2, as in published codes.",
  },
  costanzo: {
    status: "published",
    text: "Costanzo (1985). Physiological Zoology (abstract): garter snakes at 4 °C for 165 days used 0.42 to 0.45 cal per g and day, about half of what the formula of Andrews & Pough gives, 76.5 to 78.7 % of it from glycogen and protein of the muscles; no change of weight.",
  },
  stubblefield: {
    status: "published",
    text: "Stubblefield, Ultsch & Secor. Meeting abstract, Society for Integrative and Comparative Biology: standard metabolism of garter snakes fell by 95 % from 30 to 5 °C.",
  },
  bonaGalloLicht: {
    status: "published",
    text: "Bona-Gallo & Licht (1983). Herpetologica 39:173-182 (abstract): of female garter snakes, with few exceptions, only those kept for 16 weeks or more in simulated hibernation, in the dark at 4 °C, came into breeding; at 17 °C, for up to 20 weeks, ovaries stayed as in autumn.",
  },
  chappellEllis: {
    status: "published",
    text: "Chappell & Ellis (1987). Journal of Comparative Physiology B 157:227-235 (abstract): Q10 of boas and pythons 2.6; 0.80 ml of carbon dioxide for a ml of oxygen at 20 °C.",
  },
  mccueLillywhite: {
    status: "published",
    text: "McCue & Lillywhite (2002; authors and year from memory). Oxygen consumption and the energetics of island-dwelling Florida cottonmouth snakes (abstract): half of what is expected of snakes in general; Q10 2.4 to 2.8 from 15 to 30 °C; 29 % more in the dark hours.",
  },
  oda: {
    status: "published",
    text: "Oda, Leite, Abe & Klein (2021). Respiratory Physiology & Neurobiology, 103747 (abstract): carbon dioxide of 1.5 to 6 % lowered gas exchange in Boa constrictor and Crotalus durissus, oxygen of 12 to 3 % did not.",
  },
  energyOfFuels: {
    status: "published",
    text: "Energy set free by a ml of oxygen, 20.1 J, and held by a gram of fat, 39 339 J, protein, 17 985 J, and carbohydrate, 17 577 J, as in the source of HeatExchange.jl.",
  },
  beaupreZaidan: {
    status: "published",
    text: "Beaupre & Zaidan (2001). Physiological and Biochemical Zoology 74:757-768 (abstract): Q10 of timber rattlesnakes 3.7 to 4.8.",
  },
} as const satisfies Record<string, Source>;

export type SourceKey = keyof typeof sources;

/** A source as it is shown: its text, and where it was not read, a word on that. */
export const citation = (key: SourceKey): string => {
  const { status, text }: Source = sources[key];
  return `${text}${status === "recalled" && !/from memory/i.test(text) ? " From memory." : ""}`;
};
