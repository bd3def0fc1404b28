// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.ohmstead.model.CopperWire;
import org.ohmstead.thermal.CableLead;
import org.ohmstead.thermal.ConductorMaterial;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Option;

/** The two leads from the supply to the amplifier, as options. */
final class CableOptions {
    private static final double THINNEST_SQUARE_MILLIMETRES = 0.01;
    private static final double THICKEST_SQUARE_MILLIMETRES = 2000;
    private static final double SHORTEST_METRES = 0.01;
    private static final double LONGEST_METRES = 1000;
    private static final double COLDEST_CELSIUS = -60;
    private static final double HOTTEST_CELSIUS = 399;
    private static final double WIDEST_MILLIMETRES = 200;
    private static final double STRAND_FILL_RATIO = 0.75;
    private static final double MILLIMETRES_PER_METRE = 1000;

    @Option(names = "--square-millimetres", paramLabel = "A", descriptionKey = "cable.square-millimetres")
    private String squareMillimetres;

    @Option(names = "--gauge", paramLabel = "N", descriptionKey = "cable.gauge")
    private String gauge;

    @Option(names = "--metres", paramLabel = "L", descriptionKey = "cable.metres")
    private String metres;

    @Option(names = "--limit-celsius", paramLabel = "T", defaultValue = "70", descriptionKey = "cable.limit-celsius")
    private String limitCelsius;

    @Option(names = "--outer-millimetres", paramLabel = "D", descriptionKey = "cable.outer-millimetres")
    private String outerMillimetres;

    @Option(names = "--copper-clad-aluminium", descriptionKey = "cable.copper-clad-aluminium")
    private boolean clad;

    /** Returns whether a cable is described at all. */
    boolean given() {
        return squareMillimetres != null || gauge != null || metres != null;
    }

    /** Returns the leads. */
    CableLead lead() throws InputException {
        double area = area();
        if (metres == null) {
            throw new InputException(Texts.of("cable.noLength"));
        }
        double loop = 2 * Quantities.within(metres, Unit.METRE, SHORTEST_METRES, LONGEST_METRES, "--metres");
        return lead(area, loop);
    }

    /** Returns leads of another cross-section that are otherwise the same, with the insulation that is taken for it. */
    CableLead lead(double area, double loopMetres) throws InputException {
        double limit =
                Quantities.within(limitCelsius, Unit.CELSIUS, COLDEST_CELSIUS, HOTTEST_CELSIUS, "--limit-celsius");
        return new CableLead(
                clad ? ConductorMaterial.COPPER_CLAD_ALUMINIUM : ConductorMaterial.COPPER,
                area,
                loopMetres,
                OptionalDouble.empty(),
                outerMetres(area),
                outerMillimetres == null,
                limit,
                false);
    }

    private double outerMetres(double area) throws InputException {
        if (outerMillimetres == null) {
            double strands = 2 * Math.sqrt(area / (STRAND_FILL_RATIO * Math.PI)) / MILLIMETRES_PER_METRE;
            return strands + 2 * CableLead.ASSUMED_INSULATION_METRES;
        }
        double wire = 2 * Math.sqrt(area / Math.PI);
        double outer = Quantities.millimetres(outerMillimetres, 0, WIDEST_MILLIMETRES, "--outer-millimetres");
        if (outer * MILLIMETRES_PER_METRE < wire) {
            throw new InputException(Texts.of("cable.outer", outerMillimetres, Texts.three(wire)));
        }
        return outer;
    }

    private double area() throws InputException {
        if ((squareMillimetres == null) == (gauge == null)) {
            throw new InputException(squareMillimetres == null ? Texts.of("cable.noSize") : Texts.of("cable.twoSizes"));
        }
        if (squareMillimetres != null) {
            String number = squareMillimetres.strip().replaceAll("\\s*mm(2|\u00b2)$", "");
            return Quantities.within(
                    number,
                    Unit.NONE,
                    THINNEST_SQUARE_MILLIMETRES,
                    THICKEST_SQUARE_MILLIMETRES,
                    "--square-millimetres");
        }
        OptionalInt number = CopperWire.gauge(gauge);
        if (number.isEmpty()) {
            throw new InputException(Texts.of("cable.gauge", gauge));
        }
        return CopperWire.gaugeSquareMillimetres(number.getAsInt());
    }
}
