// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.ohmstead.model.Cable;
import org.ohmstead.model.SupplyLimits;
import org.ohmstead.units.text.Messages;

/**
 * The two leads from the supply to the amplifier: their resistance, loss and heat. Each lies alone and level in still
 * air; wire and insulation together are one body, whose wire is warmer than its surface by what the insulation holds
 * back.
 *
 * @param material of the wire
 * @param squareMillimetres cross-section of one conductor, above 0
 * @param loopMetres there and back, above 0
 * @param measuredLoopOhms resistance there and back at 20 degrees Celsius as measured, contacts included; overrides
 *     that of the material
 * @param outerMetres diameter of one lead with its insulation, at least that of the wire
 * @param outerAssumed whether {@code outerMetres} comes from common practice
 * @param limitCelsius the hottest that the wire may get, for the sake of the insulation
 * @param limitAssumed whether {@code limitCelsius} comes from common practice
 */
public record CableLead(
        ConductorMaterial material,
        double squareMillimetres,
        double loopMetres,
        OptionalDouble measuredLoopOhms,
        double outerMetres,
        boolean outerAssumed,
        double limitCelsius,
        boolean limitAssumed) {
    private static final Messages TEXTS = Messages.of(CableLead.class);

    /** Insulation taken where no outer diameter is known, in metres; common practice, no source. */
    public static final double ASSUMED_INSULATION_METRES = 1e-3;

    /** Limit of the wire where none is known, in degrees Celsius: that of general-purpose PVC (IEC 60227). */
    public static final double ASSUMED_LIMIT_CELSIUS = 70;

    /** The id of the heat source and of the point that {@link #point} makes. */
    public static final String ID = "cable";

    private static final double EMISSIVITY_RATIO = 0.9;
    private static final double INSULATION_WATTS_PER_METRE_KELVIN = 0.17;
    private static final double INSULATION_JOULES_PER_CUBIC_METRE_KELVIN = 1.7e6;
    private static final double STRAND_FILL_RATIO = 0.75;
    private static final double LARGEST_CHECKED_SQUARE_MILLIMETRES = 35;
    private static final double HOTTEST_CELSIUS = 400;
    private static final double COLDEST_AIR_CELSIUS = -60;
    private static final double HOTTEST_AIR_CELSIUS = 120;
    private static final double CELSIUS_ACCURACY = 1e-10;
    private static final int MOST_EVALUATIONS = 200;
    private static final double SETTLED_RATIO = 1e-9;
    private static final int INTEGRATION_SPAN = 40;
    private static final GaussIntegratorFactory GAUSS = new GaussIntegratorFactory();
    private static final int GAUSS_POINTS = 20;

    public CableLead {
        Checks.present(material, "material");
        Checks.positive(squareMillimetres, "squareMillimetres");
        Checks.positive(loopMetres, "loopMetres");
        Checks.present(measuredLoopOhms, "measuredLoopOhms")
                .ifPresent(value -> Checks.positive(value, "measuredLoopOhms"));
        double solid = 2e-3 * Math.sqrt(squareMillimetres / Math.PI);
        if (!(outerMetres >= solid) || !Double.isFinite(outerMetres)) {
            throw new IllegalArgumentException("outerMetres is " + outerMetres + "; a wire of " + squareMillimetres
                    + " square millimetres is at least " + solid + " metres thick");
        }
        Checks.within(limitCelsius, -60, HOTTEST_CELSIUS, "limitCelsius");
    }

    /** Returns the copper leads of a bench, with common practice for what is not known of them. */
    public static CableLead of(Cable cable, SupplyLimits limits) {
        Checks.present(cable, "cable");
        Checks.present(limits, "limits");
        double assumed = strandedMetres(cable.crossSectionSquareMillimetres()) + 2 * ASSUMED_INSULATION_METRES;
        // A loop that was measured as 0 says that the meter could not see it.
        OptionalDouble measured =
                cable.measuredLoopOhms().orElse(0) > 0 ? cable.measuredLoopOhms() : OptionalDouble.empty();
        return new CableLead(
                ConductorMaterial.COPPER,
                cable.crossSectionSquareMillimetres(),
                cable.loopMetres(),
                measured,
                limits.cableOuterMetres().orElse(assumed),
                limits.cableOuterMetres().isEmpty(),
                limits.cableLimitCelsius().orElse(ASSUMED_LIMIT_CELSIUS),
                limits.cableLimitCelsius().isEmpty());
    }

    /** Returns these leads of another material. */
    public CableLead withMaterial(ConductorMaterial newMaterial) {
        return new CableLead(
                newMaterial,
                squareMillimetres,
                loopMetres,
                measuredLoopOhms,
                outerMetres,
                outerAssumed,
                limitCelsius,
                limitAssumed);
    }

    /** Returns what the figures rest on besides what was entered, a sentence each; to be shown beside them. */
    public List<String> notes() {
        List<String> notes = new ArrayList<>();
        if (material.fromMemory()) {
            notes.add(TEXTS.text("cable.material", material.source()));
        }
        if (outerAssumed) {
            notes.add(TEXTS.text("cable.outer"));
        }
        if (limitAssumed) {
            notes.add(TEXTS.text("cable.limit"));
        }
        if (measuredLoopOhms.isPresent()) {
            notes.add(TEXTS.text("cable.measured"));
        }
        if (squareMillimetres > LARGEST_CHECKED_SQUARE_MILLIMETRES) {
            notes.add(TEXTS.text("cable.thick"));
        }
        notes.add(TEXTS.text("cable.insulation"));
        return List.copyOf(notes);
    }

    /** Returns the resistance there and back in ohms at a temperature of the wire in degrees Celsius, -200 to 1000. */
    public double loopOhms(double conductorCelsius) {
        double ratio = material.temperatureRatio(conductorCelsius);
        return measuredLoopOhms.isPresent()
                ? measuredLoopOhms.getAsDouble() * ratio
                : material.ohms(squareMillimetres, loopMetres, conductorCelsius);
    }

    /** Returns the volts lost there and back with a current in amperes, at least 0, and a temperature of the wire. */
    public double dropVolts(double amps, double conductorCelsius) {
        return Checks.notNegative(amps, "amps") * loopOhms(conductorCelsius);
    }

    /**
     * Returns the heat of both leads in watts with a current in amperes, RMS, at least 0, and a temperature of the
     * wire.
     */
    public double lossWatts(double ampsRms, double conductorCelsius) {
        return ampsRms * dropVolts(ampsRms, conductorCelsius);
    }

    /** Returns the heat that warms both leads by a kelvin, in joules. */
    public double joulesPerKelvin() {
        double wire = 1e-6 * squareMillimetres;
        double insulation = Math.PI / 4 * outerMetres * outerMetres - Math.PI / 4 * Math.pow(wireMetres(), 2);
        return loopMetres
                * (material.joulesPerCubicMetreKelvin() * wire + INSULATION_JOULES_PER_CUBIC_METRE_KELVIN * insulation);
    }

    /**
     * Returns how warm the leads get in the end.
     *
     * @param ampsRms current in amperes, RMS, at least 0
     * @param ambientCelsius temperature of the air, -60 to 120
     */
    public CableHeating settled(double ampsRms, double ambientCelsius) {
        Checks.notNegative(ampsRms, "ampsRms");
        air(ambientCelsius);
        double hottestSurface = surfaceCelsius(HOTTEST_CELSIUS, ambientCelsius);
        if (ampsRms > ampsAt(hottestSurface, ambientCelsius)) {
            return new SupplyNoSolution(
                    TEXTS.text("cable.melts", SupplyFigures.three(ampsRms), SupplyFigures.three(squareMillimetres)),
                    TEXTS.text("cable.melts.remedy"));
        }
        double surface = root(value -> ampsAt(value, ambientCelsius) - ampsRms, ambientCelsius, hottestSurface);
        double conductor = conductorCelsius(surface, ambientCelsius);
        return new CableHeating.Settled(
                conductor, surface, loopOhms(conductor), dropVolts(ampsRms, conductor), lossWatts(ampsRms, conductor));
    }

    /**
     * Returns the current that keeps the wire at its limit for ever, in air of a temperature in degrees Celsius, -60
     * to 120.
     */
    public CableCurrent continuous(double ambientCelsius) {
        if (air(ambientCelsius) >= limitCelsius) {
            return tooWarm(ambientCelsius);
        }
        double amps = ampsAt(surfaceCelsius(limitCelsius, ambientCelsius), ambientCelsius);
        return new CableCurrent.Continuous(amps, lossWatts(amps, limitCelsius));
    }

    /**
     * Returns how long the leads may carry a current before the wire is at its limit; the rise of its resistance and
     * the way in which cooling grows with temperature are in it.
     *
     * @param ampsRms current in amperes, RMS, at least 0
     * @param startCelsius temperature of the wire at first
     * @param ambientCelsius temperature of the air, -60 to 120
     */
    public CableDuration untilLimit(double ampsRms, double startCelsius, double ambientCelsius) {
        Checks.notNegative(ampsRms, "ampsRms");
        Checks.within(startCelsius, -60, HOTTEST_CELSIUS, "startCelsius");
        CableCurrent forEver = continuous(ambientCelsius);
        if (!(forEver instanceof CableCurrent.Continuous carried)) {
            return tooWarm(ambientCelsius);
        }
        if (startCelsius >= limitCelsius) {
            return new SupplyNoSolution(
                    TEXTS.text("cable.hot", SupplyFigures.three(startCelsius), SupplyFigures.three(limitCelsius)),
                    TEXTS.text("cable.hot.remedy"));
        }
        if (ampsRms <= carried.ampsRms() * (1 + SETTLED_RATIO)) {
            double least = Math.min(ampsRms, carried.ampsRms());
            return settled(least, ambientCelsius) instanceof CableHeating.Settled end
                    ? new CableDuration.Unlimited(end.conductorCelsius())
                    : tooWarm(ambientCelsius);
        }
        return new CableDuration.Reaches(seconds(ampsRms, startCelsius, ambientCelsius));
    }

    /** Returns the point that {@link #chain} brings to a temperature: the wire with its limit. */
    public HeatPoint point() {
        return new HeatPoint(ID, TEXTS.text("place.cable"), OptionalDouble.of(limitCelsius));
    }

    /**
     * Returns the leads as one linear body for a model of many steps, at half of the rise allowed, where it is
     * cautious from there to the limit when {@link #chainWatts} is its power; or why there is none. Cooling really
     * grows faster than the rise.
     *
     * @param ambientCelsius temperature of the air, -60 to 120, below the limit
     */
    public FosterChain chain(double ambientCelsius) {
        if (air(ambientCelsius) >= limitCelsius) {
            throw new IllegalArgumentException("ambientCelsius is " + ambientCelsius
                    + "; it must be below limitCelsius," + " which is " + limitCelsius);
        }
        double half = (limitCelsius - ambientCelsius) / 2;
        double watts = loopMetres * wattsPerMetre(ambientCelsius + half, ambientCelsius);
        return FosterChain.of(half / watts, joulesPerKelvin());
    }

    /** Returns the power for {@link #chain} in watts with a current in amperes, RMS: the loss of wire at its limit. */
    public double chainWatts(double ampsRms) {
        return lossWatts(ampsRms, limitCelsius);
    }

    private double seconds(double ampsRms, double startCelsius, double ambientCelsius) {
        double span = limitCelsius - startCelsius;
        double capacity = joulesPerKelvin();
        // With T = limit - span e^-u the time near the limit, where little power is left to warm the wire, stays
        // smooth.
        UnivariateFunction slowness = u -> {
            double below = span * Math.exp(-u);
            double conductor = limitCelsius - below;
            double net = lossWatts(ampsRms, conductor) - loopMetres * wattsPerMetre(conductor, ambientCelsius);
            return capacity * below / net;
        };
        double seconds = 0;
        for (int from = 0; from < INTEGRATION_SPAN; from++) {
            GaussIntegrator piece = GAUSS.legendre(GAUSS_POINTS, from, from + 1);
            seconds += piece.integrate(slowness);
        }
        return seconds;
    }

    private SupplyNoSolution tooWarm(double ambientCelsius) {
        return new SupplyNoSolution(
                TEXTS.text("cable.air", SupplyFigures.three(ambientCelsius), SupplyFigures.three(limitCelsius)),
                TEXTS.text("cable.air.remedy"));
    }

    /** The heat given off by a metre of lead whose wire has a temperature. */
    private double wattsPerMetre(double conductorCelsius, double ambientCelsius) {
        return surfaceWattsPerMetre(surfaceCelsius(conductorCelsius, ambientCelsius), ambientCelsius);
    }

    private double surfaceWattsPerMetre(double surfaceCelsius, double ambientCelsius) {
        return CableCooling.wattsPerMetre(surfaceCelsius, ambientCelsius, outerMetres, EMISSIVITY_RATIO);
    }

    private double conductorCelsius(double surfaceCelsius, double ambientCelsius) {
        double metreKelvinPerWatt =
                Math.log(outerMetres / wireMetres()) / (2 * Math.PI * INSULATION_WATTS_PER_METRE_KELVIN);
        return surfaceCelsius + surfaceWattsPerMetre(surfaceCelsius, ambientCelsius) * metreKelvinPerWatt;
    }

    private double surfaceCelsius(double conductorCelsius, double ambientCelsius) {
        if (conductorCelsius <= ambientCelsius) {
            return conductorCelsius;
        }
        return root(
                value -> conductorCelsius(value, ambientCelsius) - conductorCelsius, ambientCelsius, conductorCelsius);
    }

    /**
     * The current that keeps the surface at a temperature: it can be written down, unlike the temperature for a
     * current.
     */
    private double ampsAt(double surfaceCelsius, double ambientCelsius) {
        double ohmsPerMetre = loopOhms(conductorCelsius(surfaceCelsius, ambientCelsius)) / loopMetres;
        return Math.sqrt(surfaceWattsPerMetre(surfaceCelsius, ambientCelsius) / ohmsPerMetre);
    }

    private double wireMetres() {
        return Math.min(outerMetres, strandedMetres(squareMillimetres));
    }

    private static double strandedMetres(double squareMillimetres) {
        return 2e-3 * Math.sqrt(squareMillimetres / (STRAND_FILL_RATIO * Math.PI));
    }

    private static double air(double ambientCelsius) {
        return Checks.within(ambientCelsius, COLDEST_AIR_CELSIUS, HOTTEST_AIR_CELSIUS, "ambientCelsius");
    }

    private static double root(UnivariateFunction function, double low, double high) {
        return new BrentSolver(CELSIUS_ACCURACY).solve(MOST_EVALUATIONS, function, low, high);
    }
}
