// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import org.ohmstead.model.CopperWire;
import org.ohmstead.units.text.Messages;

/** What the wire of a cable is made of. */
public enum ConductorMaterial {
    /** Annealed copper of IEC 60028; density 8890 kg/m3 from there, 385 J/(kg K) as handbooks of physics have it. */
    COPPER(CopperWire.OHM_SQUARE_MILLIMETRES_PER_METRE, CopperWire.PER_KELVIN, 8890 * 385.0, false),

    /** Aluminium wire in a skin of copper: about 1.6 times the resistance of copper. Common practice, from memory. */
    COPPER_CLAD_ALUMINIUM(0.0274, 0.0040, 2.6e6, true);

    private static final Messages TEXTS = Messages.of(ConductorMaterial.class);

    private final double ohmSquareMillimetresPerMetre;
    private final double perKelvin;
    private final double joulesPerCubicMetreKelvin;
    private final boolean fromMemory;

    ConductorMaterial(
            double ohmSquareMillimetresPerMetre,
            double perKelvin,
            double joulesPerCubicMetreKelvin,
            boolean fromMemory) {
        this.ohmSquareMillimetresPerMetre = ohmSquareMillimetresPerMetre;
        this.perKelvin = perKelvin;
        this.joulesPerCubicMetreKelvin = joulesPerCubicMetreKelvin;
        this.fromMemory = fromMemory;
    }

    /** Returns the resistivity at 20 degrees Celsius in ohm square millimetres per metre. */
    public double ohmSquareMillimetresPerMetre() {
        return ohmSquareMillimetresPerMetre;
    }

    /** Returns how much the resistance rises per kelvin, over that at 20 degrees Celsius. */
    public double perKelvin() {
        return perKelvin;
    }

    /** Returns the heat that warms a cubic metre by a kelvin, in joules. */
    public double joulesPerCubicMetreKelvin() {
        return joulesPerCubicMetreKelvin;
    }

    /** Returns whether the figures come from memory and are to be shown as such. */
    public boolean fromMemory() {
        return fromMemory;
    }

    /** Returns where the figures come from, to be shown beside them. */
    public String source() {
        return TEXTS.text("material." + name());
    }

    /** Returns the resistance at a temperature in degrees Celsius, -200 to 1000, over that at 20 degrees Celsius. */
    public double temperatureRatio(double celsius) {
        Checks.within(celsius, -200, 1000, "celsius");
        return 1 + perKelvin * (celsius - CopperWire.REFERENCE_CELSIUS);
    }

    /**
     * Returns the resistance of a wire in ohms.
     *
     * @param squareMillimetres its cross-section, above 0
     * @param metres its length, at least 0; for a pair both leads together
     * @param celsius its temperature, -200 to 1000
     */
    public double ohms(double squareMillimetres, double metres, double celsius) {
        Checks.positive(squareMillimetres, "squareMillimetres");
        Checks.notNegative(metres, "metres");
        return ohmSquareMillimetresPerMetre * metres / squareMillimetres * temperatureRatio(celsius);
    }

    /**
     * Returns the depth in metres at which an alternating current has fallen to 1/e of that at the surface: sqrt(rho
     * / (pi f mu0)), closed form for a flat surface. For {@link #COPPER_CLAD_ALUMINIUM} it takes the wire as one
     * metal, which the skin of copper makes too deep.
     *
     * @param frequencyHz above 0
     * @param celsius -200 to 1000
     */
    public double skinDepthMetres(double frequencyHz, double celsius) {
        Checks.positive(frequencyHz, "frequencyHz");
        double ohmMetres = 1e-6 * ohmSquareMillimetresPerMetre * temperatureRatio(celsius);
        double henriesPerMetre = 4e-7 * Math.PI;
        return Math.sqrt(ohmMetres / (Math.PI * frequencyHz * henriesPerMetre));
    }
}
