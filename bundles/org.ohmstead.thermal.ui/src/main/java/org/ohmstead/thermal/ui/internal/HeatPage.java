// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.List;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.HeatData;
import org.ohmstead.model.OutputClass;
import org.ohmstead.model.Project;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.section.SectionControl;
import org.ohmstead.workbench.section.SectionItem;
import org.ohmstead.workbench.section.SectionPage;
import org.ohmstead.workbench.session.ProjectDesk;
import org.osgi.service.component.annotations.Component;

/** What is known of the amplifier's heat, of the supply side's bounds, and how the run is paced. */
@Component
public final class HeatPage implements SectionPage {
    private static final Messages TEXTS = Messages.of(HeatPage.class);
    private static final int AFTER_THE_PLAN = 550;

    @Override
    public String id() {
        return "heat";
    }

    @Override
    public String name() {
        return TEXTS.text("page.name");
    }

    @Override
    public int order() {
        return AFTER_THE_PLAN;
    }

    @Override
    public String iconName() {
        return "section-heat";
    }

    @Override
    public String summary(Project project) {
        HeatData heat = project.heat();
        if (heat.amplifier().equals(AmplifierHeat.NONE)) {
            return TEXTS.text("page.notKnown");
        }
        String output = heat.amplifier().outputClass() == OutputClass.UNKNOWN
                ? TEXTS.text("page.noClass")
                : HeatWords.of(heat.amplifier().outputClass());
        boolean warms = heat.amplifier().caseKelvinPerWatt().isPresent()
                && heat.amplifier().caseJoulesPerKelvin().isPresent();
        return warms ? TEXTS.text("page.caseKnown", output) : output;
    }

    @Override
    public List<SectionItem> items(Project project) {
        return List.of();
    }

    @Override
    public String where() {
        return "$.heat";
    }

    @Override
    public SectionControl create(Composite parent, ProjectDesk desk) {
        return new HeatControl(parent, desk);
    }
}
