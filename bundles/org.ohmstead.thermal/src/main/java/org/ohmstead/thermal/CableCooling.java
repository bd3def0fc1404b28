// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/**
 * The heat that a level round lead in still air gives off for each metre: natural convection by the formula of
 * Churchill and Chu for all Rayleigh numbers (International Journal of Heat and Mass Transfer 18, 1975, 1049), which
 * holds for thin leads too, where the simplified one of {@link Convection#levelCylinder} gives too much, and
 * radiation.
 */
final class CableCooling {
    private static final double GRAVITY = 9.80665;
    private static final double ZERO_CELSIUS_KELVIN = 273.15;

    private CableCooling() {}

    /** Returns the heat in watts per metre, at least 0. */
    static double wattsPerMetre(
            double surfaceCelsius, double ambientCelsius, double outerMetres, double emissivityRatio) {
        double kelvin = surfaceCelsius - ambientCelsius;
        if (kelvin <= 0) {
            return 0;
        }
        double coefficient = convection(surfaceCelsius, ambientCelsius, outerMetres)
                + Convection.radiation(emissivityRatio, surfaceCelsius, ambientCelsius);
        return Math.PI * outerMetres * coefficient * kelvin;
    }

    /**
     * Returns the coefficient of natural convection in W/(m² K); the air has the mean temperature of surface and
     * surroundings.
     */
    static double convection(double surfaceCelsius, double ambientCelsius, double outerMetres) {
        AirProperties air = new AirProperties((surfaceCelsius + ambientCelsius) / 2 + ZERO_CELSIUS_KELVIN);
        double viscosity = air.kinematicViscosity();
        double buoyancy = GRAVITY / air.kelvin() * (surfaceCelsius - ambientCelsius) * Math.pow(outerMetres, 3);
        double rayleigh = buoyancy * air.prandtl() / (viscosity * viscosity);
        double spread = Math.pow(1 + Math.pow(0.559 / air.prandtl(), 9.0 / 16), 8.0 / 27);
        double root = 0.60 + 0.387 * Math.pow(rayleigh, 1.0 / 6) / spread;
        return air.conductivity() / outerMetres * root * root;
    }
}
