// Sends the code, and opens the app when it was right.
const form = document.getElementById("pair");
const said = document.getElementById("said");
const text = (id) => document.getElementById(id).value.trim();

form.addEventListener("submit", async (event) => {
  event.preventDefault();
  said.textContent = "Asking the workshop …";
  try {
    const answer = await fetch("/api/1/pair", {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify({ code: text("code"), device: text("device") || "Phone" }),
    });
    if (answer.ok) {
      location.replace("/");
      return;
    }
    const refusal = await answer.json();
    said.textContent = `${refusal.what}. ${refusal.remedy}.`;
  } catch {
    said.textContent = "The workshop can't be reached. Is this device in its network?";
  }
});
