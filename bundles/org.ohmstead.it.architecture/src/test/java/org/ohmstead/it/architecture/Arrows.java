// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Which packages each bundle may use beside the JDK: the design's arrows, as in DEVELOPERS.md. */
final class Arrows {
    private static final String UNITS = "org.ohmstead.units";
    private static final String TEXTS = "org.ohmstead.units.text";
    private static final String FILES = "org.ohmstead.units.files";
    private static final String MODEL = "org.ohmstead.model";
    private static final String MODEL_JSON = "org.ohmstead.model.json";
    private static final String PLOT = "org.ohmstead.plot";
    private static final String PLOT_CHART = "org.ohmstead.plot.chart";
    private static final String SIGNAL = "org.ohmstead.signal";
    private static final String GAIN = "org.ohmstead.signal.gain";
    private static final String SOUND = "org.ohmstead.signal.sound";
    private static final String STIMULUS = "org.ohmstead.signal.stimulus";
    private static final String METROLOGY = "org.ohmstead.metrology";
    private static final String CURVES = "org.ohmstead.curves";
    private static final String CURVES_STUDY = "org.ohmstead.curves.study";
    private static final String LOAD = "org.ohmstead.load";
    private static final String LOAD_DRAWING = "org.ohmstead.load.drawing";
    private static final String LOAD_SEARCH = "org.ohmstead.load.search";
    private static final String THERMAL = "org.ohmstead.thermal";
    private static final String THERMAL_PLAN = "org.ohmstead.thermal.plan";
    private static final String TESTLOG = "org.ohmstead.testlog";
    private static final String LOG_BUDGET = "org.ohmstead.testlog.budget";
    private static final String LOG_CHAIN = "org.ohmstead.testlog.chain";
    private static final String LOG_SEARCH = "org.ohmstead.testlog.search";
    private static final String LAB = "org.ohmstead.testlog.shared";
    private static final String HISTORY = "org.ohmstead.history";
    private static final String HISTORY_QUALITY = "org.ohmstead.history.quality";
    private static final String EXCHANGE = "org.ohmstead.exchange";
    private static final String METROLOGY_QUALITY = "org.ohmstead.metrology.quality";
    private static final String MEASURE = "org.ohmstead.measure";
    private static final String BENCH = "org.ohmstead.measure.bench";
    private static final String SCPI = "org.ohmstead.measure.scpi";
    private static final String ENGINE = "org.ohmstead.measure.engine";
    private static final String STANDARD = "org.ohmstead.measure.standard";
    private static final String LESSONS = "org.ohmstead.lessons";
    private static final String REPORT = "org.ohmstead.report";
    private static final String JOBS = "org.ohmstead.jobs";
    private static final String WORKBENCH = "org.ohmstead.workbench";
    /** What the workbench exports; its other packages are its own. */
    private static final List<String> WORKBENCH_API = List.of(
            WORKBENCH,
            WORKBENCH + ".form",
            WORKBENCH + ".look",
            WORKBENCH + ".section",
            WORKBENCH + ".session",
            WORKBENCH + ".table");

    private static final String PLOT_UI = "org.ohmstead.plot.ui";
    /** The platform with its widgets. */
    private static final List<String> PLATFORM = List.of("org.eclipse*", "org.osgi*");

    private static final String COMPONENTS = "org.osgi.service.component.annotations";
    private static final String JACKSON = "com.fasterxml.jackson*";
    /** Reads JSON piece by piece, without making anything of it. */
    private static final String JSON_STREAM = "com.fasterxml.jackson.core";

    /** The bundles that run without a window. */
    private static final Map<String, List<String>> HEADLESS = Map.ofEntries(
            Map.entry(UNITS, List.of()),
            Map.entry(MODEL, List.of(UNITS, TEXTS)),
            Map.entry(MODEL_JSON, List.of(MODEL, UNITS, FILES, TEXTS, JACKSON)),
            Map.entry(PLOT, List.of(UNITS)),
            Map.entry(
                    PLOT_CHART,
                    List.of(
                            PLOT,
                            UNITS,
                            TEXTS,
                            "org.jfree*",
                            "org.apache.batik*",
                            "org.apache.xmlgraphics*",
                            "org.apache.pdfbox*",
                            "org.apache.fontbox*",
                            "de.rototor*")),
            Map.entry(SIGNAL, List.of(UNITS, FILES, TEXTS, PLOT, "org.jtransforms*", "pl.edu.icm*", "org.visnow*")),
            Map.entry(METROLOGY, List.of(UNITS, TEXTS, "org.hipparchus*")),
            Map.entry(CURVES, List.of(MODEL, UNITS, TEXTS, PLOT, METROLOGY, "org.hipparchus*")),
            Map.entry(LOAD, List.of(MODEL, UNITS, TEXTS, PLOT, METROLOGY, COMPONENTS)),
            Map.entry(THERMAL, List.of(MODEL, UNITS, TEXTS, PLOT, METROLOGY, "org.hipparchus*", COMPONENTS)),
            Map.entry(
                    TESTLOG,
                    List.of(MODEL, MODEL_JSON, UNITS, FILES, TEXTS, PLOT, METROLOGY, JSON_STREAM, "org.sqlite*")),
            Map.entry(LAB, List.of(TESTLOG, LOG_CHAIN, MODEL, TEXTS, "org.postgresql*")),
            Map.entry(
                    HISTORY,
                    List.of(
                            MODEL,
                            UNITS,
                            TEXTS,
                            PLOT,
                            METROLOGY,
                            METROLOGY_QUALITY,
                            CURVES,
                            TESTLOG,
                            LOG_CHAIN,
                            LOG_SEARCH)),
            Map.entry(
                    EXCHANGE,
                    List.of(
                            MODEL,
                            MODEL_JSON,
                            UNITS,
                            FILES,
                            TEXTS,
                            SIGNAL,
                            SOUND,
                            TESTLOG,
                            LOG_CHAIN,
                            JACKSON,
                            "org.dhatim*",
                            "com.github.rzymek*")),
            Map.entry(MEASURE, List.of(MODEL, SIGNAL, UNITS, TEXTS)),
            Map.entry(STANDARD, List.of(MEASURE, MODEL, SIGNAL, GAIN, SOUND, METROLOGY, UNITS, TEXTS, COMPONENTS)),
            Map.entry(BENCH, List.of(MEASURE, MODEL, SIGNAL, SOUND, STIMULUS, UNITS, TEXTS, COMPONENTS)),
            Map.entry(SCPI, List.of(MEASURE, MODEL, SIGNAL, UNITS, TEXTS, COMPONENTS)),
            Map.entry(
                    "org.ohmstead.measure.testkit",
                    List.of(
                            MEASURE,
                            MODEL,
                            SIGNAL,
                            UNITS,
                            "org.junit.jupiter.api*",
                            "org.opentest4j*",
                            "org.apiguardian*")),
            Map.entry("org.ohmstead.measure.sample", List.of(MEASURE, MODEL, SIGNAL, UNITS, COMPONENTS)),
            Map.entry(ENGINE, List.of(MEASURE, MODEL, SIGNAL, UNITS, TEXTS, TESTLOG, COMPONENTS)),
            Map.entry(
                    LESSONS,
                    List.of(
                            MODEL,
                            UNITS,
                            TEXTS,
                            PLOT,
                            PLOT_CHART,
                            SIGNAL,
                            GAIN,
                            METROLOGY,
                            CURVES_STUDY,
                            LOAD,
                            THERMAL,
                            COMPONENTS,
                            "freemarker*")),
            Map.entry(
                    REPORT,
                    List.of(
                            MODEL,
                            MODEL_JSON,
                            UNITS,
                            FILES,
                            TEXTS,
                            HISTORY,
                            PLOT,
                            PLOT_CHART,
                            SIGNAL,
                            METROLOGY,
                            CURVES,
                            TESTLOG,
                            LOG_BUDGET,
                            JACKSON,
                            "freemarker*",
                            "com.openhtmltopdf*",
                            "org.apache.pdfbox*",
                            "org.apache.fontbox*",
                            "org.apache.xmpbox*",
                            "org.apache.commons.logging*",
                            "com.github.weisj.jsvg*",
                            "de.rototor*")),
            Map.entry(
                    JOBS,
                    List.of(
                            MODEL,
                            MODEL_JSON,
                            TEXTS,
                            METROLOGY,
                            HISTORY,
                            CURVES,
                            TESTLOG,
                            STANDARD,
                            REPORT,
                            MEASURE,
                            BENCH,
                            ENGINE,
                            SIGNAL,
                            THERMAL,
                            THERMAL_PLAN,
                            HISTORY_QUALITY,
                            LAB,
                            TEXTS,
                            COMPONENTS,
                            "org.osgi.framework")),
            Map.entry(
                    "org.ohmstead.cli",
                    List.of(
                            JOBS,
                            MODEL,
                            MODEL_JSON,
                            UNITS,
                            FILES,
                            TEXTS,
                            SIGNAL,
                            GAIN,
                            SOUND,
                            STIMULUS,
                            LESSONS,
                            METROLOGY,
                            METROLOGY_QUALITY,
                            CURVES,
                            CURVES_STUDY,
                            LOAD,
                            LOAD_DRAWING,
                            LOAD_SEARCH,
                            THERMAL,
                            THERMAL_PLAN,
                            TESTLOG,
                            LOG_BUDGET,
                            LOG_CHAIN,
                            LOG_SEARCH,
                            LAB,
                            HISTORY,
                            HISTORY_QUALITY,
                            EXCHANGE,
                            STANDARD,
                            MEASURE,
                            BENCH,
                            ENGINE,
                            REPORT,
                            JACKSON,
                            "picocli*",
                            "org.osgi.framework",
                            "org.eclipse.equinox.app",
                            "org.eclipse.core.runtime")));

    /** The bundles that have a face: they see the platform and the workbench, and no other of their kind. */
    private static final Map<String, List<String>> FACES = Map.ofEntries(
            Map.entry(PLOT_UI, List.of(PLOT, PLOT_CHART, UNITS, FILES, TEXTS)),
            Map.entry(WORKBENCH, List.of(MODEL, MODEL_JSON, UNITS, FILES, TEXTS, TESTLOG, LOG_CHAIN, JOBS)),
            Map.entry(
                    "org.ohmstead.curves.ui",
                    List.of(CURVES, CURVES_STUDY, METROLOGY, MODEL, TESTLOG, UNITS, TEXTS, PLOT, PLOT_CHART, PLOT_UI)),
            Map.entry(
                    "org.ohmstead.load.ui",
                    List.of(
                            LOAD,
                            LOAD_DRAWING,
                            LOAD_SEARCH,
                            MODEL,
                            TESTLOG,
                            UNITS,
                            FILES,
                            TEXTS,
                            PLOT,
                            PLOT_CHART,
                            PLOT_UI)),
            Map.entry(
                    "org.ohmstead.thermal.ui",
                    List.of(THERMAL, THERMAL_PLAN, METROLOGY, MODEL, TESTLOG, UNITS, TEXTS, PLOT, PLOT_CHART, PLOT_UI)),
            Map.entry(
                    "org.ohmstead.signal.ui",
                    List.of(SIGNAL, GAIN, STIMULUS, STANDARD, MODEL, TESTLOG, UNITS, TEXTS, PLOT, PLOT_CHART, PLOT_UI)),
            Map.entry(
                    "org.ohmstead.sound.ui",
                    List.of(EXCHANGE, SIGNAL, SOUND, MODEL, UNITS, TEXTS, PLOT, PLOT_CHART, PLOT_UI)),
            Map.entry(
                    "org.ohmstead.lessons.ui", List.of(LESSONS, MODEL, UNITS, FILES, TEXTS, PLOT, PLOT_CHART, PLOT_UI)),
            Map.entry(
                    "org.ohmstead.measure.ui",
                    List.of(
                            MEASURE,
                            BENCH,
                            ENGINE,
                            STANDARD,
                            SIGNAL,
                            MODEL,
                            TESTLOG,
                            JOBS,
                            UNITS,
                            TEXTS,
                            PLOT,
                            PLOT_CHART,
                            PLOT_UI)),
            Map.entry(
                    "org.ohmstead.testlog.ui",
                    List.of(
                            TESTLOG,
                            LOG_BUDGET,
                            LOG_CHAIN,
                            LOG_SEARCH,
                            EXCHANGE,
                            JOBS,
                            METROLOGY,
                            SIGNAL,
                            MODEL,
                            UNITS,
                            TEXTS,
                            PLOT,
                            PLOT_CHART,
                            PLOT_UI)),
            Map.entry(
                    "org.ohmstead.history.ui",
                    List.of(
                            HISTORY,
                            HISTORY_QUALITY,
                            METROLOGY,
                            METROLOGY_QUALITY,
                            TESTLOG,
                            LOG_CHAIN,
                            LOG_SEARCH,
                            MODEL,
                            MODEL_JSON,
                            UNITS,
                            TEXTS,
                            PLOT,
                            PLOT_CHART,
                            PLOT_UI)),
            Map.entry(
                    "org.ohmstead.report.ui",
                    List.of(REPORT, JOBS, CURVES, METROLOGY, MODEL, MODEL_JSON, TESTLOG, UNITS, TEXTS, PLOT_UI)),
            Map.entry("org.ohmstead.workbench.sample", List.of(MODEL, UNITS, TEXTS)),
            Map.entry("org.ohmstead.app", List.of(MODEL, MODEL_JSON, UNITS, TEXTS, JOBS)));

    /** What each bundle may use. */
    static final Map<String, List<String>> ALLOWED = all();

    private Arrows() {}

    private static Map<String, List<String>> all() {
        Map<String, List<String>> all = new TreeMap<>(HEADLESS);
        FACES.forEach((bundle, ours) -> {
            List<String> allowed = new ArrayList<>(ours);
            allowed.addAll(PLATFORM);
            if (!bundle.equals(PLOT_UI)) {
                allowed.addAll(WORKBENCH_API);
            }
            all.put(bundle, List.copyOf(allowed));
        });
        return Collections.unmodifiableMap(all);
    }

    /** Returns whether a bundle has a face. */
    static boolean hasFace(String bundle) {
        return FACES.containsKey(bundle);
    }

    /** Returns whether a package is the named one or, with a star at the end of the name, below it too. */
    static boolean isWithin(String packageName, String allowed) {
        if (!allowed.endsWith("*")) {
            return packageName.equals(allowed);
        }
        String prefix = allowed.substring(0, allowed.length() - 1);
        return packageName.equals(prefix) || packageName.startsWith(prefix + ".");
    }
}
