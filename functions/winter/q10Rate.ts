import { cell, defineFunction, optional, quantity } from "../define";

/** The 2.4 of the default is 10^(0.038·10), the temperature term of Andrews & Pough (1985), rounded. */
export const q10Rate = defineFunction({
  name: "Q10RATE",
  summary: "A rate of the body at another temperature: times q10 for every 10 °C up.",
  parameters: {
    rate: quantity("none", "Rate at the first temperature, in any unit", [0, 1e9]),
    temperature: quantity("celsius", "Temperature of that rate", [-5, 50]),
    newTemperature: quantity("celsius", "Temperature to answer for", [-5, 50]),
    q10: optional(quantity("none", "What the rate is multiplied by for every 10 °C up", [0.1, 10]), "2.4"),
  },
  result: cell("none", "Rate at the new temperature, in the unit given"),
  sources: ["andrewsPough", "chappellEllis", "beaupreZaidan"],
  cautions: ["q10Differs", "noVet"],
  examples: [
    { given: [12, 25, 5], gives: 2.08333, within: 1e-5 },
    { given: [12, 25, 15, 3], gives: 4, within: 1e-12 },
  ],
  calculate: ({ rate, temperature, newTemperature, q10 = 2.4 }) => rate * q10 ** ((newTemperature - temperature) / 10),
  twin: ({ rate, temperature, newTemperature, q10 }) => `${rate}*${q10("2.4")}^((${newTemperature}-${temperature})/10)`,
});
