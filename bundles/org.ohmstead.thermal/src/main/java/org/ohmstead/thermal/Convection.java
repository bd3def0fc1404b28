// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/**
 * How heat leaves a surface into still air, and by radiation. The simplified formulas are those of the heat transfer textbooks for laminar
 * flow in air; such correlations agree with one another, and with measurement, within 10 to 20 %. All lengths in metres, coefficients in
 * W/(m² K).
 */
public final class Convection {
    /** Constant of Stefan and Boltzmann in W/(m² K⁴), CODATA. */
    private static final double STEFAN_BOLTZMANN = 5.670374419e-8;

    private static final double ZERO_CELSIUS = 273.15;
    private static final double GRAVITY = 9.80665;
    private static final double VERTICAL = 1.42;
    private static final double UPWARD = 1.32;
    private static final double DOWNWARD = 0.59;
    private static final double CYLINDER = 1.32;
    /** Ra up to which flow along a vertical plate stays laminar. */
    private static final double LAMINAR_RAYLEIGH = 1e9;

    private Convection() {}

    /** Returns the coefficient of an upright plate of some height: 1.42 (dT/L)^(1/4). */
    public static double verticalPlate(double kelvin, double heightMetres) {
        return quarterPower(VERTICAL, kelvin, heightMetres);
    }

    /** Returns the coefficient of a hot plate facing up, of some length: 1.32 (dT/L)^(1/4). */
    public static double plateFacingUp(double kelvin, double lengthMetres) {
        return quarterPower(UPWARD, kelvin, lengthMetres);
    }

    /** Returns the coefficient of a hot plate facing down, of some length: 0.59 (dT/L)^(1/4). */
    public static double plateFacingDown(double kelvin, double lengthMetres) {
        return quarterPower(DOWNWARD, kelvin, lengthMetres);
    }

    /** Returns the coefficient of a level cylinder: 1.32 (dT/D)^(1/4). */
    public static double levelCylinder(double kelvin, double diameterMetres) {
        return quarterPower(CYLINDER, kelvin, diameterMetres);
    }

    /**
     * Returns the coefficient of an upright plate by the formula of Churchill and Chu for all Rayleigh numbers, with the air's properties at
     * the mean temperature: a second opinion.
     */
    public static double verticalPlateAllFlows(double surfaceCelsius, double airCelsius, double heightMetres) {
        AirProperties air = film(surfaceCelsius, airCelsius);
        double rayleigh = rayleigh(surfaceCelsius, airCelsius, heightMetres);
        double prandtl = Math.pow(1 + Math.pow(0.492 / air.prandtl(), 9.0 / 16), 8.0 / 27);
        double nusselt = Math.pow(0.825 + 0.387 * Math.pow(rayleigh, 1.0 / 6) / prandtl, 2);
        return nusselt * air.conductivity() / heightMetres;
    }

    /**
     * Returns the coefficient of the walls of channels between upright plates, open above and below: Nu = (576/El² + 2.873/sqrt(El))^(-1/2),
     * El = Ra_S S/L (Bar-Cohen and Rohsenow 1984, both walls at one temperature). Narrow channels choke, wide ones act as single plates.
     *
     * @param surfaceCelsius above {@code airCelsius}
     * @param airCelsius of the air that enters below
     * @param spacingMetres between the plates, above 0
     * @param heightMetres of the plates, above 0
     */
    public static double channel(double surfaceCelsius, double airCelsius, double spacingMetres, double heightMetres) {
        AirProperties air = film(surfaceCelsius, airCelsius);
        double elenbaas = rayleigh(surfaceCelsius, airCelsius, Checks.positive(spacingMetres, "spacingMetres"))
                * spacingMetres
                / Checks.positive(heightMetres, "heightMetres");
        double nusselt = 1 / Math.sqrt(576 / (elenbaas * elenbaas) + 2.873 / Math.sqrt(elenbaas));
        return nusselt * air.conductivity() / spacingMetres;
    }

    /** Returns the spacing of thin upright plates that carries off the most heat in all: 2.714 L / Ra_L^(1/4) (Bar-Cohen and Rohsenow). */
    public static double bestSpacingMetres(double surfaceCelsius, double airCelsius, double heightMetres) {
        return 2.714 * heightMetres / Math.pow(rayleigh(surfaceCelsius, airCelsius, heightMetres), 0.25);
    }

    /** Returns the coefficient of radiation: e sigma (T1² + T2²)(T1 + T2), the temperatures from absolute zero. */
    public static double radiation(double emissivityRatio, double surfaceCelsius, double surroundingsCelsius) {
        Checks.within(emissivityRatio, 0, 1, "emissivityRatio");
        double surface = kelvin(surfaceCelsius, "surfaceCelsius");
        double around = kelvin(surroundingsCelsius, "surroundingsCelsius");
        return emissivityRatio * STEFAN_BOLTZMANN * (surface * surface + around * around) * (surface + around);
    }

    /**
     * Returns the mean rise of a plane fin over that of its root: tanh(mL)/(mL) with m = sqrt(2h/(k t)).
     *
     * @param coefficient on both faces, in W/(m² K), above 0
     * @param conductivity of the fin in W/(m K), above 0
     * @param thicknessMetres above 0
     * @param depthMetres from root to edge, at least 0
     */
    public static double finEfficiency(
            double coefficient, double conductivity, double thicknessMetres, double depthMetres) {
        double perMetre = Math.sqrt(2
                * Checks.positive(coefficient, "coefficient")
                / Checks.positive(conductivity, "conductivity")
                / Checks.positive(thicknessMetres, "thicknessMetres"));
        double argument = perMetre * Checks.notNegative(depthMetres, "depthMetres");
        return argument > 0 ? Math.tanh(argument) / argument : 1;
    }

    /** Returns whether the flow along an upright plate stays laminar, as the simplified formulas suppose. */
    static boolean laminar(double surfaceCelsius, double airCelsius, double heightMetres) {
        return rayleigh(surfaceCelsius, airCelsius, heightMetres) < LAMINAR_RAYLEIGH;
    }

    private static double rayleigh(double surfaceCelsius, double airCelsius, double metres) {
        AirProperties air = film(surfaceCelsius, airCelsius);
        double viscosity = air.kinematicViscosity();
        double kelvin = Checks.positive(surfaceCelsius - airCelsius, "surfaceCelsius - airCelsius");
        return GRAVITY / air.kelvin() * kelvin * metres * metres * metres * air.prandtl() / (viscosity * viscosity);
    }

    private static AirProperties film(double surfaceCelsius, double airCelsius) {
        return new AirProperties((kelvin(surfaceCelsius, "surfaceCelsius") + kelvin(airCelsius, "airCelsius")) / 2);
    }

    private static double kelvin(double celsius, String name) {
        return ZERO_CELSIUS + Checks.within(celsius, -ZERO_CELSIUS, Double.MAX_VALUE, name);
    }

    private static double quarterPower(double factor, double kelvin, double metres) {
        return factor * Math.pow(Checks.notNegative(kelvin, "kelvin") / Checks.positive(metres, "metres"), 0.25);
    }
}
