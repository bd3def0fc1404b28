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
        String id = in.requiredText("id", "field.standard.id");
        String name = in.requiredText("name", "field.standard.name");
        String stepId = in.text("stepId");
        String figureId = in.requiredText("figureId", "field.standard.figureId");
        String channel = in.text("channel");
        String unit = in.text("unit");
        int baselineCount = in.whole("baselineCount", "field.standard.baseline");
        double significance = in.number("significanceRatio", "field.standard.significance");
        OptionalDouble reference = in.optionalNumber("referenceValue", "field.standard.reference");
        OptionalDouble uncertainty = in.optionalNumber("referenceStandardUncertainty", "field.standard.uncertainty");
        int everyDays = in.whole("everyDays", "field.standard.everyDays");
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
        String host = in.requiredText("host", "field.shared.host");
        int port = in.whole("port", "field.shared.port");
        String database = in.requiredText("database", "field.shared.database");
        String bench = in.requiredText("bench", "field.shared.bench");
        String certificateFile = in.text("certificateFile");
        return Optional.of(in.build(() -> new SharedLog(host, port, database, bench, certificateFile)));
    }

    static SheetLayout layout(Optional<FieldReader> present) throws ProjectFileException {
        if (present.isEmpty()) {
            return SheetLayout.USUAL;
        }
        FieldReader in = present.get();
        SheetDesign design = in.optionalChoice("design", SheetDesign.class, "field.layout.design")
                .orElse(SheetLayout.USUAL.design());
        PaperSize paper = in.optionalChoice("paper", PaperSize.class, "field.layout.paper")
                .orElse(SheetLayout.USUAL.paper());
        String address = in.text("address");
        String contact = in.text("contact");
        String accreditation = in.text("accreditation");
        String logoFile = in.text("logoFile");
        List<String> projects = in.texts("comparedProjects", "field.layout.projects");
        List<String> periods = in.texts("comparedPeriods", "field.layout.periods");
        return in.build(
                () -> new SheetLayout(design, paper, address, contact, accreditation, logoFile, projects, periods));
    }
}
