// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.PaperSize;
import org.ohmstead.model.SharedLog;
import org.ohmstead.model.SheetDesign;
import org.ohmstead.model.SheetLayout;
import org.ohmstead.model.json.ProjectFileException;

/** Reads what a project holds of the laboratory around it: check standards, the shared log, and the look of its sheets. */
final class LabReader {
    private LabReader() {}

    static CheckStandard checkStandard(FieldReader in) throws ProjectFileException {
        String id = in.requiredText("id", "a short name, unique among the check standards");
        String name = in.requiredText("name", "what the check standard is");
        String stepId = in.text("stepId");
        String figureId = in.requiredText("figureId", "\"power\", or the id of a measured figure");
        String channel = in.text("channel");
        String unit = in.text("unit");
        int baselineCount = in.whole("baselineCount", "how many first values set the limits, at least 4");
        double significance = in.number(
                "significanceRatio", "chance of a false alarm as a ratio above 0, 0.01 for one test in a hundred");
        OptionalDouble reference = in.optionalNumber("referenceValue", "its true value in its unit");
        OptionalDouble uncertainty = in.optionalNumber(
                "referenceStandardUncertainty", "standard uncertainty of the true value in its unit, at least 0");
        int everyDays = in.whole("everyDays", "after how many days a new value is due, 0 for no reminder");
        return in.build(() -> new CheckStandard(
                id,
                name,
                stepId,
                figureId,
                channel,
                unit,
                baselineCount,
                significance,
                reference,
                uncertainty,
                everyDays));
    }

    static Optional<SharedLog> sharedLog(Optional<FieldReader> present) throws ProjectFileException {
        if (present.isEmpty()) {
            return Optional.empty();
        }
        FieldReader in = present.get();
        String host = in.requiredText("host", "name or address of the database server");
        int port = in.whole("port", "port of the database server, usually " + SharedLog.USUAL_PORT);
        String database = in.requiredText("database", "name of the database");
        String bench = in.requiredText("bench", "name under which this bench hands over");
        String certificateFile = in.text("certificateFile");
        return Optional.of(in.build(() -> new SharedLog(host, port, database, bench, certificateFile)));
    }

    static SheetLayout layout(Optional<FieldReader> present) throws ProjectFileException {
        if (present.isEmpty()) {
            return SheetLayout.USUAL;
        }
        FieldReader in = present.get();
        SheetDesign design = in.optionalChoice("design", SheetDesign.class, "how the sheet is laid out")
                .orElse(SheetLayout.USUAL.design());
        PaperSize paper = in.optionalChoice("paper", PaperSize.class, "what the sheet is printed on")
                .orElse(SheetLayout.USUAL.paper());
        String address = in.text("address");
        String contact = in.text("contact");
        String accreditation = in.text("accreditation");
        String logoFile = in.text("logoFile");
        List<String> projects = in.texts("comparedProjects", "folders of projects to compare with");
        List<String> periods = in.texts("comparedPeriods", "periods to compare, such as 2025 or 2024-03");
        return in.build(
                () -> new SheetLayout(design, paper, address, contact, accreditation, logoFile, projects, periods));
    }
}
