// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import java.util.List;
import java.util.Map;

/** Which packages each bundle may use beside the JDK: the design's arrows, as in DEVELOPERS.md. */
final class Arrows {
    private static final String UNITS = "org.ohmstead.units";
    private static final String MODEL = "org.ohmstead.model";
    private static final String MODEL_JSON = "org.ohmstead.model.json";
    private static final String PLOT = "org.ohmstead.plot";
    private static final String PLOT_CHART = "org.ohmstead.plot.chart";
    private static final String SIGNAL = "org.ohmstead.signal";
    private static final String METROLOGY = "org.ohmstead.metrology";
    private static final String CURVES = "org.ohmstead.curves";
    private static final String TESTLOG = "org.ohmstead.testlog";
    private static final String STANDARD = "org.ohmstead.measure.standard";
    private static final String REPORT = "org.ohmstead.report";
    private static final String JACKSON = "com.fasterxml.jackson*";

    static final Map<String, List<String>> ALLOWED = Map.ofEntries(
            Map.entry(UNITS, List.of()),
            Map.entry(MODEL, List.of(UNITS)),
            Map.entry(MODEL_JSON, List.of(MODEL, UNITS, JACKSON)),
            Map.entry(PLOT, List.of(UNITS)),
            Map.entry(PLOT_CHART, List.of(PLOT, UNITS, "org.jfree*", "org.apache.batik*", "org.apache.xmlgraphics*")),
            Map.entry(SIGNAL, List.of(UNITS, PLOT, "org.jtransforms*", "pl.edu.icm*", "org.visnow*")),
            Map.entry(METROLOGY, List.of(UNITS, "org.hipparchus*")),
            Map.entry(CURVES, List.of(MODEL, UNITS, PLOT, METROLOGY)),
            Map.entry(TESTLOG, List.of(MODEL, MODEL_JSON, UNITS, PLOT, METROLOGY, "org.sqlite*")),
            Map.entry(STANDARD, List.of(MODEL, SIGNAL, METROLOGY, UNITS)),
            Map.entry(
                    REPORT,
                    List.of(
                            MODEL,
                            MODEL_JSON,
                            UNITS,
                            PLOT,
                            PLOT_CHART,
                            SIGNAL,
                            METROLOGY,
                            CURVES,
                            TESTLOG,
                            JACKSON,
                            "freemarker*",
                            "com.openhtmltopdf*",
                            "org.apache.pdfbox*",
                            "org.apache.fontbox*",
                            "org.apache.xmpbox*",
                            "org.apache.commons.logging*",
                            "de.rototor*")),
            Map.entry(
                    "org.ohmstead.cli",
                    List.of(
                            MODEL,
                            MODEL_JSON,
                            UNITS,
                            SIGNAL,
                            METROLOGY,
                            CURVES,
                            TESTLOG,
                            STANDARD,
                            REPORT,
                            JACKSON,
                            "picocli*",
                            "org.osgi.framework",
                            "org.eclipse.equinox.app",
                            "org.eclipse.core.runtime")));

    private Arrows() {}

    /** Returns whether a package is the named one or, with a star at the end of the name, below it too. */
    static boolean isWithin(String packageName, String allowed) {
        if (!allowed.endsWith("*")) {
            return packageName.equals(allowed);
        }
        String prefix = allowed.substring(0, allowed.length() - 1);
        return packageName.equals(prefix) || packageName.startsWith(prefix + ".");
    }
}
