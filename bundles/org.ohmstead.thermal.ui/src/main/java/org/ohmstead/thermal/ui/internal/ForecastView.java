// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.List;
import org.eclipse.core.runtime.ServiceCaller;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.model.PartSharing;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.session.ProjectDesk;

/** Shows the forecast of heat, current and time in the workbench; scrolled where it has too little room. */
public final class ForecastView extends ViewPart {
    private static final int LEAST_WIDTH = 760;
    private static final int LEAST_HEIGHT = 480;

    private final ServiceCaller<PartSharing> sharing = new ServiceCaller<>(ForecastView.class, PartSharing.class);
    private ForecastComposite content;

    @Override
    public void createPartControl(Composite parent) {
        ScrolledComposite scrolled = new ScrolledComposite(parent, SWT.H_SCROLL | SWT.V_SCROLL);
        scrolled.setExpandHorizontal(true);
        scrolled.setExpandVertical(true);
        scrolled.setMinSize(LEAST_WIDTH, LEAST_HEIGHT);
        // Without the service no network is known of any load; the forecast says so.
        PartSharing service = (stock, branch) ->
                sharing.current().map(each -> each.shares(stock, branch)).orElse(List.of());
        content = new ForecastComposite(scrolled, getSite().getService(ProjectDesk.class), service);
        scrolled.setContent(content);
        ProjectCommands.help(content, "heat_forecast_view");
    }

    @Override
    public void setFocus() {
        content.setFocus();
    }

    @Override
    public void dispose() {
        sharing.unget();
        super.dispose();
    }
}
